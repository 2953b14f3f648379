namespace WitnessMark.Maths.Geometry;

/// <summary>Distances, sides and crossings in the plane, mm. Polygons are given by their corners, in order, closed.</summary>
public static class Plane2
{
    /// <summary>Positive when anticlockwise, mm².</summary>
    public static double SignedArea(ReadOnlySpan<Vec2> polygon)
    {
        if (polygon.IsEmpty) return 0;
        var twice = 0.0;
        for (int i = 0, j = polygon.Length - 1; i < polygon.Length; j = i++)
            twice += (polygon[j] - polygon[0]).Cross(polygon[i] - polygon[0]);
        return twice / 2;
    }

    /// <summary>Even-odd rule. A point within rounding of a side may fall either way.</summary>
    public static bool Contains(ReadOnlySpan<Vec2> polygon, Vec2 p)
    {
        var inside = false;
        for (int i = 0, j = polygon.Length - 1; i < polygon.Length; j = i++)
        {
            var (a, b) = (polygon[j], polygon[i]);
            if ((a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X + (p.Y - a.Y) / (b.Y - a.Y) * (b.X - a.X)) inside = !inside;
        }
        return inside;
    }

    public static double Distance(Vec2 p, Vec2 a, Vec2 b)
    {
        var d = b - a;
        var square = d.Dot(d);
        var t = square > 0 ? Math.Clamp((p - a).Dot(d) / square, 0, 1) : 0;
        return p.DistanceTo(a + t * d);
    }

    /// <summary>Least distance of two segments; 0 where they cross.</summary>
    public static double Distance(Vec2 a, Vec2 b, Vec2 c, Vec2 d)
    {
        if (Cross(a, b, c, d)) return 0;
        return Math.Min(Math.Min(Distance(a, c, d), Distance(b, c, d)), Math.Min(Distance(c, a, b), Distance(d, a, b)));
    }

    /// <summary>The segments come within <paramref name="near"/> mm of each other; quick where they are far apart.</summary>
    public static bool Touch(Vec2 a, Vec2 b, Vec2 c, Vec2 d, double near) =>
        Math.Max(a.X, b.X) + near >= Math.Min(c.X, d.X) && Math.Max(c.X, d.X) + near >= Math.Min(a.X, b.X)
        && Math.Max(a.Y, b.Y) + near >= Math.Min(c.Y, d.Y) && Math.Max(c.Y, d.Y) + near >= Math.Min(a.Y, b.Y)
        && Distance(a, b, c, d) <= near;

    /// <summary>The inner points of the two segments cross; touching ends do not count.</summary>
    public static bool Cross(Vec2 a, Vec2 b, Vec2 c, Vec2 d)
    {
        var (p, q) = ((b - a).Cross(c - a), (b - a).Cross(d - a));
        var (r, s) = ((d - c).Cross(a - c), (d - c).Cross(b - c));
        return (p > 0) != (q > 0) && (r > 0) != (s > 0) && p != 0 && q != 0 && r != 0 && s != 0;
    }

    /// <summary>Least distance between a polygon's sides and a segment, mm.</summary>
    public static double Distance(ReadOnlySpan<Vec2> polygon, Vec2 a, Vec2 b)
    {
        var least = double.PositiveInfinity;
        for (int i = 0, j = polygon.Length - 1; i < polygon.Length; j = i++)
            least = Math.Min(least, Distance(polygon[j], polygon[i], a, b));
        return least;
    }

    /// <summary>Where two lines meet, each by a point and a direction; null when they run parallel within 1e-12 radians.</summary>
    public static Vec2? Meet(Vec2 a, Vec2 alongA, Vec2 b, Vec2 alongB)
    {
        var cross = alongA.Cross(alongB);
        if (Math.Abs(cross) <= 1e-12 * alongA.Length * alongB.Length) return null;
        return a + alongA * ((b - a).Cross(alongB) / cross);
    }
}
