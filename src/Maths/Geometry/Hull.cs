using System.Collections.Immutable;

namespace WitnessMark.Maths.Geometry;

/// <summary>The convex hull of places.</summary>
public static class Hull
{
    /// <summary>Anticlockwise where y is up, without points on its sides (Andrew's monotone chain).</summary>
    public static ImmutableArray<Vec2> Of(IEnumerable<Vec2> places)
    {
        var sorted = places.Distinct().OrderBy(p => p.X).ThenBy(p => p.Y).ToArray();
        if (sorted.Length < 3) return [.. sorted];
        var hull = new List<Vec2>(sorted.Length + 1);
        Chain(hull, sorted, 1);
        Array.Reverse(sorted);
        Chain(hull, sorted, hull.Count);
        hull.RemoveAt(hull.Count - 1);
        return [.. hull];
    }

    static void Chain(List<Vec2> hull, Vec2[] sorted, int floor)
    {
        foreach (var p in sorted)
        {
            while (hull.Count > floor && (hull[^1] - hull[^2]).Cross(p - hull[^1]) <= 0) hull.RemoveAt(hull.Count - 1);
            if (hull.Count == 0 || hull[^1] != p) hull.Add(p);
        }
    }

    /// <summary>Whether a place lies in an anticlockwise hull; an empty hull holds everything.</summary>
    public static bool Holds(ImmutableArray<Vec2> hull, Vec2 p)
    {
        for (var k = 0; k < hull.Length; k++)
            if ((hull[(k + 1) % hull.Length] - hull[k]).Cross(p - hull[k]) < 0) return false;
        return true;
    }
}
