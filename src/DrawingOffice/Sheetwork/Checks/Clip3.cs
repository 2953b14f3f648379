using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>A flat side of a convex block: points with Normal·p ≤ Limit are within.</summary>
readonly record struct HalfSpace(Vec3 Normal, double Limit);

/// <summary>Cuts polygons in space to convex blocks (Sutherland and Hodgman).</summary>
static class Clip3
{
    /// <summary>What of the polygon lies within all half-spaces; fewer than three points when nothing does.</summary>
    public static List<Vec3> Cut(IReadOnlyList<Vec3> polygon, ReadOnlySpan<HalfSpace> block)
    {
        var left = new List<Vec3>(polygon);
        foreach (var side in block)
        {
            if (left.Count < 3) return left;
            left = Cut(left, side);
        }
        return left;
    }

    static List<Vec3> Cut(List<Vec3> polygon, HalfSpace side)
    {
        var kept = new List<Vec3>(polygon.Count + 2);
        var before = polygon[^1];
        var beforeOver = side.Normal.Dot(before) - side.Limit;
        foreach (var p in polygon)
        {
            var over = side.Normal.Dot(p) - side.Limit;
            if (over <= 0 != beforeOver <= 0) kept.Add(before + (p - before) * (beforeOver / (beforeOver - over)));
            if (over <= 0) kept.Add(p);
            (before, beforeOver) = (p, over);
        }
        return kept;
    }
}
