using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>An outline with each side moved in (or out) by its own amount.</summary>
static class Inset
{
    /// <param name="outline">Anticlockwise, mm.</param>
    /// <param name="by">For each side, mm, positive inwards.</param>
    /// <returns>The corners, and for each side where it now begins and ends; null where the sides leave no flat between them.</returns>
    public static (ImmutableArray<Vec2> Corners, ImmutableArray<(Vec2 From, Vec2 To)> Sides)? Of(ImmutableArray<Vec2> outline, ReadOnlySpan<double> by)
    {
        var n = outline.Length;
        var starts = new ImmutableArray<Vec2>[n];
        for (var k = 0; k < n; k++) starts[k] = Corner(outline, by, (k + n - 1) % n, k);
        var sides = ImmutableArray.CreateBuilder<(Vec2, Vec2)>(n);
        for (var k = 0; k < n; k++)
        {
            var (from, to) = (starts[k][^1], starts[(k + 1) % n][0]);
            // A side that has turned round was eaten up by its neighbours; one of no length is only rounding.
            if ((to - from).Dot((outline[(k + 1) % n] - outline[k]).Unit) < -Rounding) return null;
            sides.Add((from, to));
        }
        return ([.. Distinct(starts.SelectMany(s => s))], sides.MoveToImmutable());
    }

    static ImmutableArray<Vec2> Corner(ImmutableArray<Vec2> outline, ReadOnlySpan<double> by, int before, int here)
    {
        var n = outline.Length;
        var at = outline[here];
        var (a, b) = ((at - outline[before]).Unit, (outline[(here + 1) % n] - at).Unit);
        if (Math.Abs(a.Cross(b)) > Straight && Plane2.Meet(at + a.Left * by[before], a, at + b.Left * by[here], b) is { } corner) return [corner];
        return Math.Abs(by[before] - by[here]) < Same ? [at + b.Left * by[here]] : [at + a.Left * by[before], at + b.Left * by[here]];
    }

    // A corner of less than this is a point on a straight side, radians.
    const double Straight = 1e-3;
    const double Same = 1e-9;
    const double Rounding = 1e-6;

    static IEnumerable<Vec2> Distinct(IEnumerable<Vec2> points)
    {
        var kept = new List<Vec2>();
        foreach (var p in points)
            if (kept.Count == 0 || kept[^1].DistanceTo(p) > Same) kept.Add(p);
        if (kept.Count > 1 && kept[0].DistanceTo(kept[^1]) <= Same) kept.RemoveAt(kept.Count - 1);
        return kept;
    }
}
