using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Shapes;

static class Arcs
{
    public const double WholeTurn = 2 * Math.PI;

    public static bool IsWhole(ArcMark arc) => Math.Abs(arc.Sweep) >= WholeTurn - 1e-12;

    public static Vec2 At(ArcMark arc, double along) => arc.Centre + Vec2.Polar(arc.Start + arc.Sweep * along, arc.Radius);

    public static bool Passes(ArcMark arc, double angle) => Along(arc, angle) is var a && a >= 0 && a <= 1;

    /// <summary>How far along the arc (0 at its start, 1 at its end) the direction comes first; past 1 when the arc misses it.</summary>
    public static double Along(ArcMark arc, double angle)
    {
        if (arc.Sweep == 0) return double.PositiveInfinity;
        var turn = (angle - arc.Start) * Math.Sign(arc.Sweep);
        return (turn - WholeTurn * Math.Floor(turn / WholeTurn)) / Math.Abs(arc.Sweep);
    }
}
