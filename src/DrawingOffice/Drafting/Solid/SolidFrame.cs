using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Drafting.Solid;

/// <summary>
/// The drawing's axes laid on a plan in space. The sketch says which way up the part lies, to 45°; the face with most on it and the longest
/// edge say exactly. Coordinates count from the corner farthest to the left, front and bottom.
/// </summary>
static class SolidFrame
{
    static readonly Vec3[] s_axes = [new(1, 0, 0), new(0, 1, 0), new(0, 0, 1)];

    /// <summary>The frame, the face it lies by and the corner it counts from; null where there are none.</summary>
    public static (Motion3 Frame, string? Face, string? Corner) Of(SolidPlan plan)
    {
        var face = plan.Features.Where(f => f is { Kind: SolidKind.Plane, Loose: false })
            .OrderByDescending(f => plan.Sample.Features.Count(o => o.On == f.Id)).FirstOrDefault();
        var turned = face is null ? Motion3.Identity : Turned(face.Direction, Longest(plan));
        var corner = plan.Features.Where(f => f is { Kind: SolidKind.Point, Loose: false })
            .OrderBy(f => turned.Local(f.At) is var p ? p.X + p.Y + p.Z : 0).FirstOrDefault();
        return (turned with { Origin = corner?.At ?? Vec3.Zero }, face?.Id, corner?.Id);
    }

    static Vec3? Longest(SolidPlan plan) =>
        plan.Features.Where(f => f is { Kind: SolidKind.Edge, Loose: false, Length: not null }).OrderByDescending(f => f.Length!.Value.Value).FirstOrDefault()?.Direction;

    static Motion3 Turned(Vec3 normal, Vec3? edge)
    {
        var first = Nearest(normal, -1);
        // Without an edge, or with one square to the face, the sketch's own axis serves.
        var other = edge is { } e && e - normal * e.Dot(normal) is { Length: > 0.3 } across ? across.Unit : Vec3.Zero;
        if (other == Vec3.Zero) other = s_axes[(first + 1) % 3] - normal * s_axes[(first + 1) % 3].Dot(normal);
        var second = Nearest(other, first);
        var axes = new Vec3[3];
        axes[first] = normal * Math.Sign(normal.Dot(s_axes[first]));
        axes[second] = other.Unit * Math.Sign(other.Dot(s_axes[second]));
        var third = 3 - first - second;
        axes[third] = axes[(third + 1) % 3].Cross(axes[(third + 2) % 3]);
        return new(axes[0], axes[1], axes[2], Vec3.Zero);
    }

    static int Nearest(Vec3 d, int but) => Enumerable.Range(0, 3).Where(i => i != but).MaxBy(i => Math.Abs(d.Dot(s_axes[i])));
}
