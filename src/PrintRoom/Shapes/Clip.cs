using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Letters;

namespace WitnessMark.PrintRoom.Shapes;

/// <summary>
/// Marks cut at the edges of a box. Lines, arcs and circles stay lines and arcs; ellipses and lettering that the edge crosses become paths,
/// chords within 0.005 mm of the curve. A mark wholly inside stays as it is.
/// </summary>
public static class Clip
{
    const double Flatness = 0.005;

    public static IEnumerable<Mark> To(Mark mark, Box box)
    {
        if (Box.Of(mark) is not { } extent || !box.Meets(extent)) return [];
        if (box.Holds(extent)) return [mark];
        return mark switch
        {
            LineMark m => Line(m, box),
            ArcMark m => Arc(Arcs.IsWhole(m) ? m with { Sweep = Arcs.WholeTurn } : m, box),
            CircleMark m => Arc(new(m.Centre, m.Radius, 0, Arcs.WholeTurn, m.Layer, m.Stroke, m.Tone), box),
            PathMark { Filled: true } m => Filled(m, box),
            PathMark m => Path(m.Closed ? [.. m.Points, m.Points[0]] : m.Points, m, box),
            _ => Curves.Of(mark).SelectMany(c => Path(c.Points(Flatness), Template(mark), box)),
        };
    }

    static PathMark Template(Mark mark) =>
        new([], false, false, mark.Layer, mark.Stroke, mark.Tone, mark is TextMark text ? text.Height * Lettering.Pen : 0);

    static IEnumerable<Mark> Line(LineMark line, Box box)
    {
        if (Within(line.A, line.B, box) is var (from, to)) yield return line with { A = from, B = to };
    }

    /// <summary>The part of a segment inside the box (Liang and Barsky's parametric clipping).</summary>
    static (Vec2 From, Vec2 To)? Within(Vec2 a, Vec2 b, Box box)
    {
        var (low, high) = (0.0, 1.0);
        var d = b - a;
        ReadOnlySpan<(double Rate, double Room)> sides =
            [(-d.X, a.X - box.Left), (d.X, box.Right - a.X), (-d.Y, a.Y - box.Bottom), (d.Y, box.Top - a.Y)];
        foreach (var (rate, room) in sides)
        {
            if (rate == 0 && room < 0) return null;
            if (rate < 0) low = Math.Max(low, room / rate);
            if (rate > 0) high = Math.Min(high, room / rate);
        }
        return low > high ? null : (low == 0 ? a : a + low * d, high == 1 ? b : a + high * d);
    }

    static IEnumerable<Mark> Arc(ArcMark arc, Box box)
    {
        double[] cuts = [0, .. Crossings(arc, box).Select(angle => Arcs.Along(arc, angle)).Where(a => a is > 0 and < 1).Order(), 1];
        for (var i = 1; i < cuts.Length; i++)
        {
            var (from, to) = (cuts[i - 1], cuts[i]);
            if (to > from && box.Holds(Arcs.At(arc, (from + to) / 2)))
                yield return arc with { Start = arc.Start + arc.Sweep * from, Sweep = arc.Sweep * (to - from) };
        }
    }

    /// <summary>The directions from the centre in which the whole circle crosses the lines of the box's sides.</summary>
    static IEnumerable<double> Crossings(ArcMark arc, Box box)
    {
        foreach (var x in new[] { box.Left, box.Right })
            if (Math.Abs(x - arc.Centre.X) <= arc.Radius)
            {
                var half = Math.Acos((x - arc.Centre.X) / arc.Radius);
                yield return half;
                yield return -half;
            }
        foreach (var y in new[] { box.Bottom, box.Top })
            if (Math.Abs(y - arc.Centre.Y) <= arc.Radius)
            {
                var half = Math.Asin((y - arc.Centre.Y) / arc.Radius);
                yield return half;
                yield return Math.PI - half;
            }
    }

    static IEnumerable<Mark> Path(ImmutableArray<Vec2> points, PathMark like, Box box)
    {
        var runs = new List<List<Vec2>>();
        for (var i = 1; i < points.Length; i++)
        {
            if (Within(points[i - 1], points[i], box) is not var (from, to)) continue;
            if (runs.Count > 0 && runs[^1][^1] == from) runs[^1].Add(to);
            else runs.Add([from, to]);
        }
        return runs.Select(run => like with { Points = [.. run], Closed = false });
    }

    /// <summary>A filled polygon against each side in turn (Sutherland and Hodgman); a neck outside may leave an edge of no width.</summary>
    static IEnumerable<Mark> Filled(PathMark path, Box box)
    {
        IReadOnlyList<Vec2> points = path.Points;
        foreach (var depth in new Func<Vec2, double>[] { p => p.X - box.Left, p => box.Right - p.X, p => p.Y - box.Bottom, p => box.Top - p.Y })
            points = Side(points, depth);
        if (points.Count > 2) yield return path with { Points = [.. points] };
    }

    static List<Vec2> Side(IReadOnlyList<Vec2> points, Func<Vec2, double> depth)
    {
        var kept = new List<Vec2>();
        for (var i = 0; i < points.Count; i++)
        {
            var (a, b) = (points[i], points[(i + 1) % points.Count]);
            var (da, db) = (depth(a), depth(b));
            if (da >= 0) kept.Add(a);
            if (da >= 0 != db >= 0) kept.Add(a + da / (da - db) * (b - a));
        }
        return kept;
    }
}
