using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo.Edges;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Tracing;

/// <summary>The edge itself, found across a trace every pixel and a half.</summary>
static class EdgeWalk
{
    const double Spacing = 1.5;

    /// <summary>px to either side of the trace. Cause: a coarse net strays three pixels from its edge.</summary>
    const double Reach = 6;

    /// <summary>In the order of the trace; all go from dark to light on the same hand.</summary>
    public static List<EdgePoint> Of(TruePhoto photo, ImmutableArray<Vec2> path, bool closed)
    {
        var even = Even(path, closed);
        var smooth = Smooth(Smooth(even, closed), closed);
        var found = new List<(EdgePoint Point, bool LightLeft)>(smooth.Length);
        for (var k = 0; k < smooth.Length; k++)
        {
            var (before, after) = closed ? (smooth[(k + smooth.Length - 2) % smooth.Length], smooth[(k + 2) % smooth.Length]) : (smooth[Math.Max(0, k - 2)], smooth[Math.Min(smooth.Length - 1, k + 2)]);
            var across = (after - before).Left.Unit;
            if (!photo.Light.Holds(smooth[k], 2) || EdgeProfile.Fit(photo.Light, smooth[k], across, Reach, 0.02) is not { } met) continue;
            found.Add((EdgePoint.Of(photo.Camera, smooth[k] + across * met.Offset, met.Step > 0 ? across : -across, met.Blur), met.Step > 0));
        }
        var left = 2 * found.Count(f => f.LightLeft) > found.Count;
        return [.. found.Where(f => f.LightLeft == left).Select(f => f.Point)];
    }

    static Vec2[] Even(ImmutableArray<Vec2> path, bool closed)
    {
        var points = new List<Vec2>();
        var due = 0.0;
        for (var k = 0; k + 1 < path.Length + (closed ? 1 : 0); k++)
        {
            var (a, b) = (path[k], path[(k + 1) % path.Length]);
            var length = a.DistanceTo(b);
            for (; due < length; due += Spacing) points.Add(a + (b - a) * (due / length));
            due -= length;
        }
        return [.. points];
    }

    /// <summary>The mean of seven, fewer at the ends of an open trace.</summary>
    static Vec2[] Smooth(Vec2[] points, bool closed)
    {
        var n = points.Length;
        var smooth = new Vec2[n];
        for (var k = 0; k < n; k++)
        {
            var reach = closed ? Math.Min(3, n / 4) : Math.Min(3, Math.Min(k, n - 1 - k));
            for (var d = -reach; d <= reach; d++) smooth[k] += points[(k + d + n) % n];
            smooth[k] /= 2 * reach + 1;
        }
        return smooth;
    }
}
