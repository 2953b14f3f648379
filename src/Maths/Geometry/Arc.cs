using System.Collections.Immutable;

namespace WitnessMark.Maths.Geometry;

/// <summary>A circular arc, mm and radians; <paramref name="Sweep"/> is positive anticlockwise.</summary>
public readonly record struct Arc(Vec2 Centre, double Radius, double Start, double Sweep)
{
    /// <param name="bulge">tan(sweep/4), not 0.</param>
    public static Arc Of(Vec2 from, Vec2 to, double bulge)
    {
        var centre = 0.5 * (from + to) + (to - from).Left * ((1 - bulge * bulge) / (4 * bulge));
        return new(centre, centre.DistanceTo(from), (from - centre).Angle, 4 * Math.Atan(bulge));
    }

    /// <summary>Twice the area between arc and chord, mm²; positive when anticlockwise.</summary>
    public double TwiceSegmentArea => Radius * Radius * (Sweep - Math.Sin(Sweep));

    public Vec2 At(double share) => Centre + Vec2.Polar(Start + share * Sweep, Radius);

    /// <summary>Adds the points between the ends so that no chord is further than <paramref name="error"/> mm from the arc.</summary>
    public void AddBetween(ImmutableArray<Vec2>.Builder points, double error)
    {
        var n = Chords(Radius, Sweep, error);
        for (var k = 1; k < n; k++) points.Add(At((double)k / n));
    }

    /// <summary>
    /// Chords that an arc needs for a sagitta of at most <paramref name="error"/> mm (taken as 1e-6 when less); at least one for each 30°.
    /// </summary>
    public static int Chords(double radius, double sweep, double error)
    {
        // Sagitta = 2 r sin²(sweep/4), which keeps its digits on flat arcs where 1 − cos does not.
        var most = Math.Min(Math.PI / 6, 4 * Math.Asin(Math.Sqrt(Math.Min(1, Math.Max(error, 1e-6) / (2 * radius)))));
        return Math.Max(1, (int)Math.Ceiling(Math.Abs(sweep) / most - 1e-9));
    }
}
