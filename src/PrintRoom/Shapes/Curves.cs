using System.Collections.Immutable;
using WitnessMark.PrintRoom.Letters;

namespace WitnessMark.PrintRoom.Shapes;

/// <summary>Any mark as the path of a pen.</summary>
public static class Curves
{
    public static ImmutableArray<Curve> Of(Mark mark) => mark switch
    {
        LineMark m => [Curve.Straight([m.A, m.B])],
        CircleMark m => [Curve.Ellipse(m.Centre, m.Radius, m.Radius, 0, 0, Arcs.WholeTurn)],
        ArcMark m => [Curve.Ellipse(m.Centre, m.Radius, m.Radius, 0, m.Start, Math.Clamp(m.Sweep, -Arcs.WholeTurn, Arcs.WholeTurn))],
        EllipseMark m => [Curve.Ellipse(m.Centre, m.HalfA, m.HalfB, m.Turn, 0, Arcs.WholeTurn)],
        PathMark m => m.Points.IsDefaultOrEmpty ? [] : [Curve.Straight(m.Points, m.Closed || m.Filled)],
        TextMark m => Lettering.Curves(m),
        _ => throw new ArgumentException($"A mark of a kind unknown to the print room: {mark.GetType().Name}"),
    };
}
