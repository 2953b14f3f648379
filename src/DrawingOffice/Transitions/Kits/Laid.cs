using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>A straight element of a flat piece.</summary>
/// <param name="Angle">Bent or rolled there, radians, up; what the small diagonals beside it turn is shared out to it.</param>
/// <param name="Edge">A flat panel, a fan or the whole piece begins or ends here.</param>
public readonly record struct FlatElement(Vec2 First, Vec2 Second, double Angle, bool Edge)
{
    public double Length => First.DistanceTo(Second);
}

/// <summary>One sheet laid flat, seen from the inside of the shape, with its elements in order from the right.</summary>
/// <param name="Outline">Anticlockwise, without the lap; its last side runs down the last element.</param>
public sealed record Laid(string Name, Loop Outline, ImmutableArray<FlatElement> Elements, Strip Strip)
{
    /// <summary>From a strip that was laid flat.</summary>
    /// <param name="edge">Whether the n-th element ends a panel.</param>
    public static Laid Of(string name, Strip strip, FlatStrip flat, Func<int, bool> edge)
    {
        var elements = ImmutableArray.CreateBuilder<FlatElement>();
        for (var i = 0; i < flat.Rungs.Length; i++)
        {
            var rung = flat.Rungs[i];
            if (!rung.Element) continue;
            var angle = flat.Angles[i];
            if (i > 0 && !flat.Rungs[i - 1].Element) angle += flat.Angles[i - 1] / 2;
            if (i + 1 < flat.Rungs.Length && !flat.Rungs[i + 1].Element) angle += flat.Angles[i + 1] / 2;
            elements.Add(new(flat.First[rung.First], flat.Second[rung.Second], angle, edge(elements.Count)));
        }
        return new(name, Around(flat.First, flat.Second), elements.ToImmutable(), strip);
    }

    /// <summary>The two edges as one outline; corners that lie on a straight run, or on each other, are left out.</summary>
    public static Loop Around(IReadOnlyList<Vec2> first, IReadOnlyList<Vec2> second)
    {
        var points = new List<Vec2>();
        foreach (var p in first.Reverse().Concat(second))
        {
            if (points.Count > 0 && points[^1].DistanceTo(p) < Straight) continue;
            if (points.Count > 1 && Plane2.Distance(points[^1], points[^2], p) < Straight && (points[^1] - points[^2]).Dot(p - points[^1]) > 0) points.RemoveAt(points.Count - 1);
            points.Add(p);
        }
        return Loop.Of([.. points]);
    }

    // Far over the rounding of a chain of triangles, far under a scriber's line, mm.
    const double Straight = 1e-6;

    /// <summary>The piece with its lap at the last element.</summary>
    /// <param name="lap">mm; 0 for none.</param>
    public Piece ToPiece(double thickness, double lap)
    {
        var outline = lap > 0 ? Lapped(lap) : Outline;
        var creases = ImmutableArray.CreateBuilder<Crease>();
        var lines = ImmutableArray.CreateBuilder<Witness>();
        // Numbered only as densely as can be read.
        var every = Math.Max(1, Elements.Length / 24);
        for (var i = 0; i < Elements.Length; i++)
        {
            var e = Elements[i];
            var end = i == 0 || i == Elements.Length - 1;
            if (!end && e.Angle > Bent) creases.Add(new($"{i}", [e.First, e.Second], e.Angle, thickness, 0));
            else if (!end && (e.Edge || i % every == 0)) lines.Add(new($"{i}", [e.First, e.Second]));
            if (end && lap > 0 && i > 0) lines.Add(new("lap to here", [e.First, e.Second]));
        }
        return new(Name, thickness, outline) { Creases = creases.ToImmutable(), Witnesses = lines.ToImmutable(), Notes = ["seen from the inside: all bends fold up, towards you"] };
    }

    /// <summary>From this turn at one element on it is set in a folder or over an edge, under it rolled (common practice), radians.</summary>
    const double Bent = 12 * Math.PI / 180;

    Loop Lapped(double lap)
    {
        var (a, b) = (Elements[^1].First, Elements[^1].Second);
        var up = (b - a).Unit;
        // Drawn in at both ends so that the tab keeps clear of what is joined on there.
        var nip = Math.Min(lap, a.DistanceTo(b) / 4);
        return new([.. Outline.Corners, new(b + up.Left * lap - up * nip), new(a + up.Left * lap + up * nip)]);
    }
}
