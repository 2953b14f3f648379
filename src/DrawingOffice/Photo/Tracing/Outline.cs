using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo.Edges;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Tracing;

/// <summary>
/// From a trace to its sides: the edge found across the trace to a fraction of a pixel, cut into straights and arcs, each fitted, corners where
/// neighbours meet. Every ± holds the edge's scatter, the camera (both sides of a corner go with it together), where an edge lies in the light,
/// and what no camera follows.
/// </summary>
public static class Outline
{
    /// <summary>px; a point's scatter is not taken for less when the edge is cut.</summary>
    const double LeastScatter = 0.12;

    /// <summary>Edge points of a side, a pixel and a half apart. Cause: the blur of two corners leaves nothing straight of a shorter one; its neighbours then meet.</summary>
    const int LeastPoints = 8;

    /// <param name="path">px, as <see cref="Snap.Path"/> gives, all stretches one after another.</param>
    /// <param name="closed">The trace ends where it began.</param>
    public static Parsed<OutlineSeen> Of(TruePhoto photo, ImmutableArray<Vec2> path, bool closed)
    {
        if (path.IsDefault || path.Length < 2) return Refusal.Of("trace", "", "two places along an edge, or more");
        foreach (var p in path)
            if (!photo.Light.Holds(p)) return Refusal.Of("trace", $"{p.X:0.#}, {p.Y:0.#}", "within the picture");
        var points = EdgeWalk.Of(photo, path, closed);
        if (points.Count < 12) return Refusal.Of("trace", $"{points.Count} edge points", "a longer trace, along an edge that stands out");
        Vec2[] mm = [.. points.Select(p => p.Mm)];
        var least = LeastScatter / photo.Camera.PixelsPerMm(mm[mm.Length / 2]);
        var sides = new List<SideFit>();
        foreach (var s in Stretches.Of(mm, Stretches.Scatter(mm, least)))
            if (s.To - s.From >= LeastPoints && SideFit.Of(photo, points.GetRange(s.From, s.To - s.From), s.Straight) is { } side) sides.Add(side);
        if (closed) Joined(photo, sides);
        if (sides.Count == 0) return Refusal.Of("trace", $"{points.Count} edge points", "a trace along straight edges or arcs");
        return new OutlineSeen(Told(photo, sides, points, closed), closed, [.. mm.Select(photo.Face.Raise)]);
    }

    /// <summary>A closed trace that began in the middle of a straight side gives that side twice: once is right.</summary>
    static void Joined(TruePhoto photo, List<SideFit> sides)
    {
        if (sides.Count < 3 || !sides[0].Straight || !sides[^1].Straight) return;
        var (first, last) = (sides[0], sides[^1]);
        if (Math.Abs(first.Along.Cross(last.Along)) > 0.02 || first.Foot(last.At).DistanceTo(last.At) > 0.1) return;
        if (SideFit.Of(photo, [.. last.Points, .. first.Points], true) is not { } one) return;
        sides[0] = one;
        sides.RemoveAt(sides.Count - 1);
    }

    static ImmutableArray<SideSeen> Told(TruePhoto photo, List<SideFit> sides, List<EdgePoint> points, bool closed)
    {
        var n = sides.Count;
        var begins = new Spot[n + 1];
        for (var k = 0; k <= n; k++)
        {
            var (before, after) = (k > 0 ? sides[k - 1] : closed ? sides[^1] : null, k < n ? sides[k] : closed ? sides[0] : null);
            begins[k] = before is not null && after is not null && n > 1
                ? Corner(photo, before, after, (before.Points[^1].Mm + after.Points[0].Mm) / 2)
                : End(photo, (before ?? after)!, after is null ? points[^1].Mm : points[0].Mm);
        }
        return [.. sides.Select((s, k) => Told(photo, s, begins[k], begins[k + 1]))];
    }

    static SideSeen Told(TruePhoto photo, SideFit side, Spot from, Spot to)
    {
        var shrink = 1 - photo.Face.Share;
        var middle = Place(photo, side, side.Points[side.Points.Count / 2].Mm);
        if (side.Straight)
        {
            var turn = side.Fit.Covariance(photo, [[0, 1]])[0, 0] + photo.Print.AcrossStd * photo.Print.AcrossStd;
            return new(from, to, middle, null, null, new(side.Along.Angle, Math.Sqrt(turn)), side.Fit.Scatter * shrink, side.Fit.Points);
        }
        var covariance = side.Fit.Covariance(photo, [[1, 0, 0], [0, 1, 0], [0, 0, 1]]);
        var spread = new Spread(covariance[0, 0], covariance[0, 1], covariance[1, 1]) + Shared(photo, side.At);
        var drawn = Rounding.Of(side.Points, side.Radius);
        return new(from, to, middle, Spots.OnFace(photo, side.At, spread), new((side.Radius + drawn.Value) * shrink, Math.Sqrt(covariance[2, 2] + drawn.Std * drawn.Std) * shrink),
            new((to.At - from.At).Angle, 0), side.Fit.Scatter * shrink, side.Fit.Points);
    }

    /// <summary>Where two sides meet; both lean on the same camera, so its share is taken of both together.</summary>
    static Spot Corner(TruePhoto photo, SideFit a, SideFit b, Vec2 near)
    {
        var at = SideFit.Meet(a, b, near);
        var (mine, theirs) = (Slopes(a, m => SideFit.Meet(m, b, at)), Slopes(b, m => SideFit.Meet(a, m, at)));
        return Told(photo, at, a.Fit.Covariance(photo, mine, b.Fit, theirs));
    }

    /// <summary>A point of a side; where it stops along the side is not known better than the trace, and two pixels are taken.</summary>
    static Spot End(TruePhoto photo, SideFit side, Vec2 near)
    {
        var spot = Place(photo, side, near);
        return spot with { Spread = spot.Spread + Spread.Along(side.WayAt(side.Foot(near)) * (2 / photo.Camera.PixelsPerMm(near))) };
    }

    static Spot Place(TruePhoto photo, SideFit side, Vec2 near) => Told(photo, side.Foot(near), side.Fit.Covariance(photo, Slopes(side, m => m.Foot(near))));

    static Spot Told(TruePhoto photo, Vec2 at, double[,] c) => Spots.OnFace(photo, at, new Spread(c[0, 0], c[0, 1], c[1, 1]) + Shared(photo, at));

    static Spread Shared(TruePhoto photo, Vec2 at) => Spots.OfModel(photo) + Spots.OfPrint(photo.Print, at);

    /// <summary>How a place moves with a side's figures, by differences on both sides; two rows.</summary>
    static double[][] Slopes(SideFit side, Func<SideFit, Vec2> place)
    {
        double[][] rows = [new double[side.Figures], new double[side.Figures]];
        var by = new double[side.Figures];
        for (var k = 0; k < side.Figures; k++)
        {
            // A micrometre, or what turns a point 100 mm away by as much.
            var step = side.Straight && k == 1 ? 1e-5 : 1e-3;
            by[k] = step;
            var high = place(side.Moved(by));
            by[k] = -step;
            var slope = (high - place(side.Moved(by))) / (2 * step);
            by[k] = 0;
            (rows[0][k], rows[1][k]) = (slope.X, slope.Y);
        }
        return rows;
    }
}
