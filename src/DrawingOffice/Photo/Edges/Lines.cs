using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Edges;

/// <summary>A line through points.</summary>
/// <param name="Along">The way the points run.</param>
/// <param name="Reach">Root mean square distance of the points from the middle along the line.</param>
/// <param name="Std">Standard deviation of a point across the line.</param>
readonly record struct LineThrough(Vec2 Middle, Vec2 Along, double Reach, double Std, int Used);

/// <summary>Straight lines through points, squares of the distances across least (total least squares).</summary>
static class Lines
{
    /// <summary>In robust standard deviations; a bit of dirt lies far beyond.</summary>
    const double Far = 4;

    /// <summary>px. Cause: rounding to 256 steps of light scatters an edge by about this much, and a scatter below it is chance.</summary>
    public const double Least = 0.01;

    /// <summary>Points far from all others left out; null for fewer than four.</summary>
    public static LineThrough? Fit(IReadOnlyList<Vec2> points)
    {
        var used = points.ToList();
        for (var round = 0; round < 4; round++)
        {
            if (used.Count < 4) return null;
            var (middle, along, reach, std) = Plain(used);
            var sizes = points.Select(p => Math.Abs(along.Cross(p - middle))).ToArray();
            var robust = Math.Max(Least, 1.4826 * used.Select(p => Math.Abs(along.Cross(p - middle))).Order().ElementAt(used.Count / 2));
            var kept = points.Where((_, i) => sizes[i] <= Far * robust).ToList();
            if (kept.Count == used.Count) return new(middle, along.Dot(points[^1] - points[0]) < 0 ? -along : along, reach, Math.Max(Least, std), used.Count);
            used = kept;
        }
        if (used.Count < 4) return null;
        var last = Plain(used);
        return new(last.Middle, last.Along.Dot(points[^1] - points[0]) < 0 ? -last.Along : last.Along, last.Reach, Math.Max(Least, last.Std), used.Count);
    }

    /// <summary>Principal axis of the points' second moments.</summary>
    public static (Vec2 Middle, Vec2 Along, double Reach, double Std) Plain(IReadOnlyList<Vec2> points)
    {
        var middle = Vec2.Zero;
        foreach (var p in points) middle += p;
        middle /= points.Count;
        double xx = 0, xy = 0, yy = 0;
        foreach (var p in points)
        {
            var d = p - middle;
            (xx, xy, yy) = (xx + d.X * d.X, xy + d.X * d.Y, yy + d.Y * d.Y);
        }
        var along = Vec2.Polar(0.5 * Math.Atan2(2 * xy, xx - yy));
        double off = 0, run = 0;
        foreach (var p in points)
        {
            var d = p - middle;
            (off, run) = (off + along.Cross(d) * along.Cross(d), run + along.Dot(d) * along.Dot(d));
        }
        return (middle, along, Math.Sqrt(run / points.Count), Math.Sqrt(off / Math.Max(1, points.Count - 2)));
    }
}
