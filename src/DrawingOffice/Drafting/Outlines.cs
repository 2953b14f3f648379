using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting;

/// <summary>Shape of outlines: points along them, what encloses them, and the sharp corners behind their fillets.</summary>
static class Outlines
{
    /// <summary>Largest distance between an arc and the chords that stand for it in <see cref="Points(Segment)"/>, mm.</summary>
    public const double ChordError = 0.01;

    /// <summary>Points along a piece, its start included and its end left out.</summary>
    public static IEnumerable<Vec2> Points(Segment segment)
    {
        if (segment is not ArcSegment arc) return [segment.From];
        var widest = 2 * Math.Acos(Math.Max(0.5, 1 - ChordError / Math.Max(arc.Radius, ChordError)));
        var steps = Math.Max(2, (int)Math.Ceiling(Math.Abs(arc.Sweep) / widest));
        return Enumerable.Range(0, steps).Select(i => arc.Centre + (arc.From - arc.Centre).Turned(arc.Sweep * i / steps));
    }

    public static IEnumerable<Vec2> Points(ImmutableArray<Segment> loop) => loop.SelectMany(Points);

    public static Box Bounds(ImmutableArray<ImmutableArray<Segment>> loops) =>
        Box.Round(loops.SelectMany(loop => loop.SelectMany(s => Extremes(s).Append(s.From).Append(s.To))));

    /// <summary>A sharp corner: where two straight pieces meet, or would meet had they no fillet between them.</summary>
    /// <param name="Fillet">The rounding between them.</param>
    /// <param name="Into">Direction in which the outline arrives.</param>
    /// <param name="OutOf">Direction in which it leaves.</param>
    public readonly record struct Corner(Vec2 At, string? Id, ArcSegment? Fillet, Vec2 Into, Vec2 OutOf);

    public static IEnumerable<Corner> Corners(ImmutableArray<Segment> loop)
    {
        for (var i = 0; i < loop.Length; i++)
        {
            var before = loop[(i + loop.Length - 1) % loop.Length];
            var (here, after) = (loop[i], loop[(i + 1) % loop.Length]);
            if (here is ArcSegment arc)
            {
                if (SharpOf(before, arc, after) is { } sharp) yield return sharp;
                else if (!Tangent(before, arc)) yield return Met(before, arc);
            }
            else if (before is LineSegment ? Turns(before, here) : !Tangent(before, here))
            {
                yield return Met(before, here);
            }
        }
    }

    public static bool IsFillet(Segment before, ArcSegment arc, Segment after) => SharpOf(before, arc, after) is not null;

    /// <summary>Direction of travel at the start of a piece.</summary>
    public static Vec2 Leaving(Segment s) => s is ArcSegment a ? (a.From - a.Centre).Left.Unit * Math.Sign(a.Sweep) : (s.To - s.From).Unit;

    /// <summary>Direction of travel at the end of a piece.</summary>
    public static Vec2 Arriving(Segment s) => s is ArcSegment a ? (a.To - a.Centre).Left.Unit * Math.Sign(a.Sweep) : (s.To - s.From).Unit;

    static Corner Met(Segment before, Segment here) => new(here.From, here.CornerId, null, Arriving(before), Leaving(here));

    static Corner? SharpOf(Segment before, ArcSegment arc, Segment after)
    {
        if (before is not LineSegment || after is not LineSegment || Math.Abs(arc.Sweep) > 0.97 * Math.PI) return null;
        if (!Tangent(before, arc) || !Tangent(arc, after)) return null;
        var (d, e) = (Arriving(before), Leaving(after));
        var cross = d.Cross(e);
        if (Math.Abs(cross) < 1e-6) return null;
        return new(before.To + d * ((after.From - before.To).Cross(e) / cross), arc.CornerId, arc, d, e);
    }

    // A measured fillet is never tangent to the last digit: 3° is what the eye takes for smooth.
    static bool Tangent(Segment before, Segment after) =>
        Arriving(before).Dot(Leaving(after)) > Math.Cos(3 * Math.PI / 180);

    // Two pieces of one straight edge meet in no corner.
    static bool Turns(Segment before, Segment here) => Math.Abs(Arriving(before).Cross(Leaving(here))) > 1e-4
        || Arriving(before).Dot(Leaving(here)) < 0;

    static IEnumerable<Vec2> Extremes(Segment s)
    {
        if (s is not ArcSegment arc) yield break;
        var start = (arc.From - arc.Centre).Angle;
        for (var quarter = 0; quarter < 4; quarter++)
        {
            var turn = Math.IEEERemainder(quarter * Math.PI / 2 - start, 2 * Math.PI);
            if (arc.Sweep > 0 && turn < 0) turn += 2 * Math.PI;
            if (arc.Sweep < 0 && turn > 0) turn -= 2 * Math.PI;
            if (Math.Abs(turn) <= Math.Abs(arc.Sweep)) yield return arc.Centre + Vec2.Polar(quarter * Math.PI / 2, arc.Radius);
        }
    }
}
