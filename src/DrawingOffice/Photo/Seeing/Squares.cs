using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Photo.Seeing;

/// <summary>All black four-cornered figures in a picture.</summary>
static class Squares
{
    /// <summary>Pixels of the smaller picture in which dark patches are sought; the sides are found in the picture itself.</summary>
    const double Enough = 2_500_000;

    public static int Shrink(Light light) => Math.Max(1, (int)Math.Sqrt(light.Width * (double)light.Height / Enough));

    /// <param name="small">The picture made smaller by <paramref name="by"/>.</param>
    public static List<Square> Of(Light light, Light small, int by, int window, CancellationToken stop)
    {
        var found = new List<Square>();
        foreach (var patch in Patches.Of(small, window))
        {
            stop.ThrowIfCancellationRequested();
            if (FourCorners(patch) is not { } rough) continue;
            for (var k = 0; k < 4; k++) rough[k] = rough[k] * by;
            if (Square.Of(light, rough) is { } square) found.Add(square);
        }
        return found;
    }

    /// <summary>
    /// The two places furthest apart, and the furthest from the line between them on either side; null when these four do not fill the patch.
    /// Anticlockwise as seen.
    /// </summary>
    static Vec2[]? FourCorners(Patch patch)
    {
        var hull = patch.Hull;
        if (hull.Length < 4) return null;
        var (a, c) = Furthest(hull);
        var (b, d) = (a, a);
        var across = (c - a).Left.Unit;
        foreach (var p in hull)
        {
            if (across.Dot(p - a) > across.Dot(b - a)) b = p;
            if (across.Dot(p - a) < across.Dot(d - a)) d = p;
        }
        Vec2[] corners = [a, b, c, d];
        var (area, whole) = (Math.Abs(Plane2.SignedArea(corners)), Math.Abs(Plane2.SignedArea(hull.AsSpan())));
        if (!(area > 0.8 * whole && patch.Area > 0.65 * whole)) return null;
        return Plane2.SignedArea(corners) < 0 ? corners : [a, d, c, b];
    }

    static (Vec2 A, Vec2 B) Furthest(ImmutableArray<Vec2> hull)
    {
        var (a, b, most) = (hull[0], hull[0], -1.0);
        for (var i = 0; i < hull.Length; i++)
            for (var k = 0; k < i; k++)
                if (hull[i].DistanceTo(hull[k]) is var d && d > most) (a, b, most) = (hull[i], hull[k], d);
        return (a, b);
    }
}
