using System.Collections.Immutable;

namespace WitnessMark.Maths.Geometry;

/// <summary>Rounds the corners of a straight-sided outline by tangent arcs.</summary>
public static class Fillet
{
    /// <param name="radii">One for each corner, mm; 0 leaves it sharp.</param>
    /// <returns>The rounded outline, or which corner has too little room for its radius.</returns>
    public static Parsed<Loop> Round(ReadOnlySpan<Vec2> points, ReadOnlySpan<double> radii)
    {
        var n = points.Length;
        var setbacks = new double[n];
        for (var i = 0; i < n; i++)
            // A corner that turns by less than this is a point on a straight side.
            if (radii[i] > 0 && Math.Abs(TurnAt(points, i)) > 1e-9) setbacks[i] = radii[i] * Math.Tan(Math.Abs(TurnAt(points, i)) / 2);
        var corners = ImmutableArray.CreateBuilder<Corner>();
        for (var i = 0; i < n; i++)
        {
            var next = (i + 1) % n;
            // Adjacent arcs may meet but not overlap; 1e-9 mm forgives rounding.
            if ((radii[i] > 0 || radii[next] > 0) && setbacks[i] + setbacks[next] > points[i].DistanceTo(points[next]) + 1e-9)
            {
                var worse = setbacks[i] >= setbacks[next] ? i : next;
                return Refusal.Of($"corner {worse + 1}", $"radius {radii[worse]:0.###}", "the sides beside it are too short for that radius");
            }
            AddCorner(corners, points, i, radii[i], setbacks[i]);
        }
        return new Loop(corners.ToImmutable());
    }

    static void AddCorner(ImmutableArray<Corner>.Builder corners, ReadOnlySpan<Vec2> points, int i, double radius, double setback)
    {
        var at = points[i];
        if (radius <= 0 || setback <= 0)
        {
            corners.Add(new(at));
            return;
        }
        var n = points.Length;
        corners.Add(new(at + (points[(i + n - 1) % n] - at).Unit * setback, Math.Tan(TurnAt(points, i) / 4)));
        corners.Add(new(at + (points[(i + 1) % n] - at).Unit * setback));
    }

    /// <summary>How far the walk turns at a corner, radians in (−π, π], positive to the left.</summary>
    public static double TurnAt(ReadOnlySpan<Vec2> points, int i)
    {
        var n = points.Length;
        var (a, b) = (points[i] - points[(i + n - 1) % n], points[(i + 1) % n] - points[i]);
        return Math.Atan2(a.Cross(b), a.Dot(b));
    }
}
