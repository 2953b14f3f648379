using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.DrawingOffice.Photo.Edges;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Photo.Seeing;

/// <summary>A straight side as a fitted line: its middle, direction, the points' root mean square distance along it, and their standard ± across.</summary>
readonly record struct SideLine(Vec2 Middle, Vec2 Along, double Reach, double Std, int Points, double Blur)
{
    public Vec2 Crossing(SideLine o)
    {
        var t = (o.Middle - Middle).Cross(o.Along) / Along.Cross(o.Along);
        return Middle + Along * t;
    }
}

/// <summary>A black four-cornered figure in the picture; sides and corners anticlockwise as seen.</summary>
/// <param name="Map">From the unit square about 0 (corners ∓½, from the bottom left) to the picture.</param>
sealed record Square(ImmutableArray<SideLine> Sides, ImmutableArray<Vec2> Corners, double[] Map, bool Eye)
{
    /// <summary>Cause: paper in a deep shadow beside a lit part still sends back ten times this.</summary>
    const double LeastStep = 0.015;

    public static ImmutableArray<Vec2> Unit { get; } = [new(-0.5, -0.5), new(0.5, -0.5), new(0.5, 0.5), new(-0.5, 0.5)];

    public double[] Back { get; } = Homography.Inverse(Map);

    public Vec2 Middle { get; } = Homography.Map(Map, Vec2.Zero);

    public double ShortestSide => Enumerable.Range(0, 4).Min(k => Corners[k].DistanceTo(Corners[(k + 1) % 4]));

    /// <summary>Its four corners sharpened by its sides; null when it has no four straight dark-to-light sides.</summary>
    public static Square? Of(Light light, ReadOnlySpan<Vec2> rough)
    {
        var corners = rough.ToArray();
        var sides = new SideLine[4];
        for (var round = 0; round < 2; round++)
        {
            for (var k = 0; k < 4; k++)
            {
                // The line across a side must reach neither the eye nor the next square.
                var span = (corners[(k + 1) % 4] - corners[k]).Unit;
                var depth = Math.Abs(span.Cross((corners[(k + 2) % 4] + corners[(k + 3) % 4] - corners[k] - corners[(k + 1) % 4]) / 2));
                if (Side(light, corners[k], corners[(k + 1) % 4], Math.Clamp(0.27 * depth, 2.7, 8)) is not { } side) return null;
                sides[k] = side;
            }
            for (var k = 0; k < 4; k++)
            {
                corners[k] = sides[(k + 3) % 4].Crossing(sides[k]);
                if (!(corners[k].DistanceTo(rough[k]) < 0.25 * rough[k].DistanceTo(rough[(k + 1) % 4]) + 3) || !light.Holds(corners[k])) return null;
            }
        }
        if (Plane2.SignedArea(corners) >= 0 || Homography.Of(Unit.AsSpan(), corners) is not { } map) return null;
        return HasEye(light, map) is { } eye ? new([.. sides], [.. corners], map, eye) : null;
    }

    /// <summary>A line through the edge points between two corners, its ends left out; null when fewer than four agree.</summary>
    static SideLine? Side(Light light, Vec2 a, Vec2 b, double reach)
    {
        var (along, length) = ((b - a).Unit, a.DistanceTo(b));
        var across = along.Left;
        var margin = Math.Min(0.22 * length, 3);
        // A pixel and a half apart: nearer ones would share pixels, and their scatter would promise too much.
        var n = Math.Min(50, (int)((length - 2 * margin) / 1.5) + 1);
        if (length < 8 || n < 4) return null;
        var (points, blur) = (new List<Vec2>(n), 0.0);
        for (var k = 0; k < n; k++)
        {
            var at = a + along * (margin + (length - 2 * margin) * k / (n - 1));
            // Corners run anticlockwise as seen and y falls, so Left points outward: from dark to light.
            if (EdgeProfile.Fit(light, at, across, reach, LeastStep) is not { } met || met.Step <= 0) continue;
            points.Add(at + across * met.Offset);
            blur += met.Blur;
        }
        return points.Count < Math.Max(4, 0.6 * n) ? null : Lines.Fit(points) is { } line ? new(line.Middle, line.Along, line.Reach, line.Std, line.Used, blur / points.Count) : null;
    }

    /// <summary>Whether the middle is light; null when neither light nor dark.</summary>
    static bool? HasEye(Light light, double[] map)
    {
        double Mean(double radius)
        {
            double sum = 0;
            for (var k = 0; k < 12; k++) sum += light.At(Homography.Map(map, Vec2.Polar(k * Math.PI / 6, radius)));
            return sum / 12;
        }
        // In sides: the eye reaches to 0.2, black from there to 0.5, paper beyond.
        var (middle, black, paper) = ((light.At(Homography.Map(map, Vec2.Zero)) + Mean(0.08)) / 2, Mean(0.5 * (0.5 + Target.Eye / Target.Side / 2)), Mean(0.85));
        var share = (middle - black) / (paper - black);
        return share > 0.4 ? true : share < 0.25 ? false : null;
    }
}
