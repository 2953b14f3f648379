using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// The ± of the angle between two faces from the ± of their points, to first order (JCGM 100, 5.1 and 5.2): each face's plane is fitted
/// through its own points, the angle answers to a move of a point by the difference of the two planes' tilts, points of both counted in both.
/// </summary>
static class AngleSpread
{
    /// <returns>Standard uncertainty, radians.</returns>
    public static double Std(Pressing p, ImmutableArray<int> first, ImmutableArray<int> second, ImmutableArray<Vec3> measured, Vec3 along)
    {
        var gradient = Gradient(first, second, measured, along);
        if (p.Covariance.IsEmpty) return Math.Sqrt(gradient.Sum(g => Square(g.Value.X * p.Points[g.Key].Std.X) + Square(g.Value.Y * p.Points[g.Key].Std.Y) + Square(g.Value.Z * p.Points[g.Key].Std.Z)));
        var n = 3 * p.Points.Length;
        var terms = gradient.SelectMany(g => new (int At, double By)[] { (3 * g.Key, g.Value.X), (3 * g.Key + 1, g.Value.Y), (3 * g.Key + 2, g.Value.Z) }).ToArray();
        var variance = terms.Sum(a => terms.Sum(b => a.By * b.By * p.Covariance[a.At * n + b.At]));
        return Math.Sqrt(Math.Max(0, variance));
    }

    static double Square(double x) => x * x;

    /// <summary>Of the bend angle by each point, radians per mm.</summary>
    internal static Dictionary<int, Vec3> Gradient(ImmutableArray<int> first, ImmutableArray<int> second, ImmutableArray<Vec3> measured, Vec3 along)
    {
        var (a, b) = (Plane.Through([.. first.Select(i => measured[i])]), Plane.Through([.. second.Select(i => measured[i])]));
        // The line the planes share; nearly flat they tell none, and the edge stands for it.
        var line = a.Normal.Cross(b.Normal) is { Length: > 1e-6 } c ? c.Unit : along;
        if (line.Dot(along) < 0) line *= -1;
        // Positive bends lift the second face: its normal turns against the edge of the first.
        var gradient = new Dictionary<int, Vec3>();
        foreach (var i in first) Add(i, a.Tilt(measured[i], line.Cross(a.Normal)));
        foreach (var i in second) Add(i, b.Tilt(measured[i], line.Cross(b.Normal)) * -1);
        return gradient;

        void Add(int i, Vec3 g) => gradient[i] = gradient.TryGetValue(i, out var had) ? had + g : g;
    }
}
