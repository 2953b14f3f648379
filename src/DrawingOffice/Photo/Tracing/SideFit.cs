using WitnessMark.DrawingOffice.Photo.Edges;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Tracing;

/// <summary>
/// A side fitted to its edge points, mm on the sheet. Figures of a line: how far it lies to the left of <paramref name="At"/>, and its turn
/// (radians) about it. Figures of an arc: centre and radius.
/// </summary>
/// <param name="At">Middle of the points, or the arc's centre.</param>
/// <param name="Along">The way the line runs with the trace; zero for an arc.</param>
/// <param name="Radius">0 for a line.</param>
sealed record SideFit(Vec2 At, Vec2 Along, double Radius, Fitted Fit, IReadOnlyList<EdgePoint> Points)
{
    public bool Straight => Radius == 0;

    public int Figures => Straight ? 2 : 3;

    /// <summary>Null when the points hold no such side.</summary>
    public static SideFit? Of(TruePhoto photo, IReadOnlyList<EdgePoint> points, bool straight) => straight ? Line(photo, points) : Arc(photo, points) ?? Line(photo, points);

    static SideFit? Line(TruePhoto photo, IReadOnlyList<EdgePoint> points)
    {
        if (Lines.Fit([.. points.Select(p => p.Mm)]) is not { } line) return null;
        var left = line.Along.Left;
        var near = points.Where(p => Math.Abs(left.Dot(p.Mm - line.Middle)) <= 4.5 * line.Std).ToArray();
        double[][] rows = [.. near.Select(p => left.Dot(p.Across) is var c ? new[] { c, c * line.Along.Dot(p.Mm - line.Middle) } : [])];
        return Fitted.Of(photo, near, rows, [.. near.Select(p => left.Dot(p.Mm - line.Middle))]) is { } fit ? new(line.Middle, line.Along, 0, fit, near) : null;
    }

    static SideFit? Arc(TruePhoto photo, IReadOnlyList<EdgePoint> points)
    {
        var kept = points;
        for (var round = 0; round < 3; round++)
        {
            if (kept.Count < 6 || Circles.Fit([.. kept.Select(p => p.Mm)]) is not var (c, r)) return null;
            double Off(EdgePoint p) => Math.Abs(p.Mm.DistanceTo(c) - r);
            var limit = 3.5 * Math.Max(1e-4, 1.4826 * kept.Select(Off).Order().ElementAt(kept.Count / 2));
            kept = [.. points.Where(p => Off(p) <= limit)];
        }
        if (kept.Count < 6 || Circles.Fit([.. kept.Select(p => p.Mm)]) is not var (centre, radius)) return null;
        double[][] rows = [.. kept.Select(p => (p.Mm - centre).Unit is var u && u.Dot(p.Across) >= 0 ? new[] { u.X, u.Y, 1 } : [-u.X, -u.Y, -1])];
        return Fitted.Of(photo, kept, rows, [.. kept.Select(p => p.Mm.DistanceTo(centre) - radius)]) is { } fit ? new(centre, Vec2.Zero, radius, fit, kept) : null;
    }

    /// <summary>The same side with its figures moved.</summary>
    public SideFit Moved(ReadOnlySpan<double> by) => Straight
        ? this with { At = At + Along.Left * by[0], Along = Along.Turned(by[1]) }
        : this with { At = At + new Vec2(by[0], by[1]), Radius = Radius + by[2] };

    /// <summary>The nearest point of the whole line or circle.</summary>
    public Vec2 Foot(Vec2 p) => Straight ? At + Along * Along.Dot(p - At) : At + (p - At).Unit * Radius;

    /// <summary>Which way the side runs at a place, length 1, without regard to sense.</summary>
    public Vec2 WayAt(Vec2 p) => Straight ? Along : (p - At).Left.Unit;

    /// <summary>
    /// Where two sides meet near a place: their crossing; where they only touch or nearly run on into one another, half way between the two
    /// at their closest.
    /// </summary>
    public static Vec2 Meet(SideFit a, SideFit b, Vec2 near)
    {
        // Cause: below five degrees the crossing runs away along both sides, and the trace says better where one ends.
        if (Math.Abs(a.WayAt(near).Cross(b.WayAt(near))) < 0.087) return Touch(a, b, near);
        var p = near;
        for (var n = 0; n < 30; n++)
        {
            // Crossing of the tangents at the feet: Newton's step for two curves.
            Vec2 f = a.Foot(p), g = b.Foot(p), u = a.WayAt(f), v = b.WayAt(g);
            var area = u.Cross(v);
            if (Math.Abs(area) < 0.02) return Touch(a, b, near);
            var next = f + u * ((g - f).Cross(v) / area);
            if (next.DistanceTo(near) > 50) return Touch(a, b, near);
            var settled = next.DistanceTo(p) < 1e-11;
            p = next;
            if (settled) break;
        }
        return p;
    }

    static Vec2 Touch(SideFit a, SideFit b, Vec2 near)
    {
        // A line's foot from the arc's centre is where it would touch.
        var p = a.Straight && !b.Straight ? a.Foot(b.At) : b.Straight && !a.Straight ? b.Foot(a.At) : near;
        if (p.DistanceTo(near) > 10) p = near;
        return (a.Foot(p) + b.Foot(p)) / 2;
    }
}
