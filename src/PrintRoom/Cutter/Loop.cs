using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Cutter;

/// <summary>A corner of a polyline and the bulge to the next: the tangent of a quarter of the arc's sweep, 0 for a straight side.</summary>
readonly record struct Corner(Vec2 At, double Bulge = 0);

/// <summary>A piece of a profile that may be walked either way.</summary>
readonly record struct Side(Vec2 From, Vec2 To, ImmutableArray<Corner> Corners)
{
    /// <summary>Nothing for a mark that is no open line.</summary>
    public static Side? Of(Mark mark) => mark switch
    {
        LineMark m when m.A != m.B => new(m.A, m.B, [new(m.A)]),
        ArcMark { Radius: > 0 } m when m.Sweep != 0 && !Arcs.IsWhole(m) => new(Arcs.At(m, 0), Arcs.At(m, 1), Bulged(m)),
        PathMark { Filled: false, Closed: false, Points.IsDefault: false } m when m.Points.Length > 1 && m.Points[0] != m.Points[^1] =>
            new(m.Points[0], m.Points[^1], [.. m.Points.SkipLast(1).Select(p => new Corner(p))]),
        _ => null,
    };

    public Side Reversed()
    {
        var corners = Corners;
        var ends = corners.Skip(1).Select(c => c.At).Append(To);
        return new(To, From, [.. ends.Zip(corners, (end, corner) => new Corner(end, -corner.Bulge)).Reverse()]);
    }

    /// <summary>An arc past half a turn in two, so that no bulge passes 1.</summary>
    static ImmutableArray<Corner> Bulged(ArcMark m) => Math.Abs(m.Sweep) > Math.PI
        ? [new(Arcs.At(m, 0), Math.Tan(m.Sweep / 8)), new(Arcs.At(m, 0.5), Math.Tan(m.Sweep / 8))]
        : [new(Arcs.At(m, 0), Math.Tan(m.Sweep / 4))];
}
