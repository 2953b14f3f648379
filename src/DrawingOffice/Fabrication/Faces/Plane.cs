using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// The plane nearest to the points of a ring (least sum of squares of distances): its normal is the scatter's axis of least spread.
/// </summary>
/// <param name="Normal">Length 1; the ring runs anticlockwise seen from its end.</param>
/// <param name="First">Axis of middle spread, length 1.</param>
/// <param name="Second">Axis of widest spread.</param>
/// <param name="Spread">Sums of squares along normal, first and second axis, mm².</param>
sealed record Plane(Vec3 Middle, Vec3 Normal, Vec3 First, Vec3 Second, (double Normal, double First, double Second) Spread)
{
    public static Plane Through(ReadOnlySpan<Vec3> ring)
    {
        var middle = Vec3.Zero;
        foreach (var p in ring) middle += p;
        middle /= ring.Length;
        var scatter = new double[3, 3];
        var newell = Vec3.Zero;
        for (int i = 0, j = ring.Length - 1; i < ring.Length; j = i++)
        {
            var d = ring[i] - middle;
            double[] c = [d.X, d.Y, d.Z];
            for (var a = 0; a < 3; a++)
                for (var b = 0; b < 3; b++) scatter[a, b] += c[a] * c[b];
            newell += (ring[j] - middle).Cross(d);
        }
        var (values, v) = SymmetricEigen.Of(scatter);
        Vec3 Axis(int k) => new(v[0, k], v[1, k], v[2, k]);
        var normal = Axis(0).Dot(newell) < 0 ? Axis(0) * -1 : Axis(0);
        return new(middle, normal.Unit, Axis(1).Unit, Axis(2).Unit, (values[0], values[1], values[2]));
    }

    public double Off(Vec3 p) => Normal.Dot(p - Middle);

    /// <summary>
    /// How the normal, seen along a direction square to it, answers to a move of a point of the ring: the gradient, radians per mm
    /// (first-order change of an eigenvector).
    /// </summary>
    public Vec3 Tilt(Vec3 point, Vec3 along)
    {
        var d = point - Middle;
        return Of(First, Spread.First) + Of(Second, Spread.Second);

        Vec3 Of(Vec3 axis, double spread) => (axis * d.Dot(Normal) + Normal * d.Dot(axis)) * (along.Dot(axis) / (Spread.Normal - spread));
    }

    /// <summary>
    /// Moves points onto all their planes at once: planes are fitted, each point goes the shortest way to where its planes meet, and so on
    /// until nothing moves. A point of one plane drops onto it, of two onto their line, of three to their corner.
    /// </summary>
    /// <returns>The points, and how far any still lies off one of its planes, mm.</returns>
    public static (ImmutableArray<Vec3> Points, double Left) Flatten(ImmutableArray<Vec3> points, IReadOnlyList<ImmutableArray<int>> rings)
    {
        const int Rounds = 200;
        var moved = points.ToArray();
        var facesOf = Enumerable.Range(0, points.Length).Select(p => Enumerable.Range(0, rings.Count).Where(f => rings[f].Contains(p)).ToArray()).ToArray();
        var left = 0.0;
        for (var round = 0; round < Rounds; round++)
        {
            var planes = rings.Select(r => Through([.. r.Select(i => moved[i])])).ToArray();
            left = 0;
            for (var p = 0; p < moved.Length; p++)
                foreach (var f in facesOf[p]) left = Math.Max(left, Math.Abs(planes[f].Off(moved[p])));
            if (left < Flat) break;
            for (var p = 0; p < moved.Length; p++) moved[p] = Onto(moved[p], [.. facesOf[p].Select(f => planes[f])]);
        }
        return ([.. moved], left);
    }

    /// <summary>Points this near a plane lie on it, mm: rounding over a metre, ten thousand times under a scribed line.</summary>
    public const double Flat = 1e-9;

    // Planes nearly alike tell no corner; past three, the others are met by going round again.
    static Vec3 Onto(Vec3 p, Plane[] planes)
    {
        const double Alike = 0.05;
        var square = new List<Vec3>();
        foreach (var plane in planes)
        {
            var n = plane.Normal;
            foreach (var s in square) n -= s * n.Dot(s);
            if (n.Length < Alike)
            {
                p -= plane.Normal * (plane.Off(p) / 2);
                continue;
            }
            p -= n * (plane.Off(p) / n.Dot(plane.Normal));
            square.Add(n.Unit);
            if (square.Count == 3) break;
        }
        return p;
    }
}
