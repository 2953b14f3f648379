using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Photo.Edges;

/// <summary>
/// A shape fitted to edge points with what its figures owe to what. Own: the points' own scatter, apart from every other shape's. Common: how
/// each figure moves with the camera's ten figures, and (last) with where edges lie in the light; shapes off one photograph share these.
/// </summary>
/// <param name="Own">Covariance, n x n by rows.</param>
/// <param name="Common">n rows of eleven.</param>
/// <param name="Scatter">Root mean square distance of the points used, mm.</param>
/// <param name="EdgeStd">Standard ± of where an edge lies in the light, mm.</param>
sealed record Fitted(double[] Own, double[][] Common, double Scatter, double EdgeStd, int Points)
{
    const int Shared = Camera.Figures + 1;

    /// <param name="rows">For each point the derivative of the shape's place along <see cref="EdgePoint.Across"/> by the shape's figures.</param>
    /// <param name="residuals">Distance of each point from the shape, mm.</param>
    public static Fitted? Of(TruePhoto photo, IReadOnlyList<EdgePoint> points, double[][] rows, double[] residuals)
    {
        var n = rows[0].Length;
        var normal = new double[n * n];
        foreach (var row in rows)
            for (var i = 0; i < n; i++)
                for (var k = 0; k < n; k++) normal[i * n + k] += row[i] * row[k];
        if (points.Count <= n || Cholesky.Inverse(normal, n) is not { } inverse) return null;
        var sum = residuals.Sum(r => r * r);
        var scatter = Math.Sqrt(sum / points.Count);
        var variance = sum / (points.Count - n);
        // The same least squares, of what each shared cause does to every point.
        var common = new double[n][];
        for (var i = 0; i < n; i++) common[i] = new double[Shared];
        for (var p = 0; p < points.Count; p++)
            for (var i = 0; i < n; i++)
            {
                double gain = 0;
                for (var k = 0; k < n; k++) gain += inverse[i * n + k] * rows[p][k];
                for (var k = 0; k < Camera.Figures; k++) common[i][k] += gain * points[p].ByTheta[k];
                common[i][Camera.Figures] += gain;
            }
        return new([.. inverse.Select(v => v * variance)], common, scatter, Edge(photo, points.Average(p => p.Blur)), points.Count);
    }

    /// <summary>
    /// Covariance of figures that follow from this shape's and another's by the derivatives <paramref name="mine"/> and <paramref name="theirs"/>
    /// (one row a figure).
    /// </summary>
    public double[,] Covariance(TruePhoto photo, double[][] mine, Fitted? other = null, double[][]? theirs = null)
    {
        var m = mine.Length;
        var shared = new double[m][];
        var result = new double[m, m];
        for (var i = 0; i < m; i++)
        {
            shared[i] = new double[Shared];
            Gather(shared[i], mine[i]);
            if (other is not null) other.Gather(shared[i], theirs![i]);
        }
        var edge = other is null ? EdgeStd : Math.Max(EdgeStd, other.EdgeStd);
        for (var i = 0; i < m; i++)
            for (var k = 0; k < m; k++)
            {
                var sum = Alone(mine[i], mine[k]) + (other?.Alone(theirs![i], theirs[k]) ?? 0);
                sum += Spots.Product(photo.Camera.Covariance, shared[i].AsSpan(0, Camera.Figures), shared[k].AsSpan(0, Camera.Figures));
                result[i, k] = sum + shared[i][Camera.Figures] * shared[k][Camera.Figures] * edge * edge;
            }
        return result;
    }

    void Gather(double[] shared, double[] row)
    {
        for (var f = 0; f < row.Length; f++)
            for (var k = 0; k < Shared; k++) shared[k] += row[f] * Common[f][k];
    }

    double Alone(double[] a, double[] b)
    {
        double sum = 0;
        for (var i = 0; i < a.Length; i++)
            for (var k = 0; k < b.Length; k++) sum += a[i] * Own[i * a.Length + k] * b[k];
        return sum;
    }

    /// <summary>
    /// Half as far as the squares came out too large or small (a part stands out less than ink, so light moves its edges less), and three
    /// hundredths of the blur: a camera's own curve of light is not quite the standard's (common practice; tests give it 8 %).
    /// </summary>
    static double Edge(TruePhoto photo, double blur) =>
        Math.Sqrt((photo.Bloom.Value * photo.Bloom.Value + photo.Bloom.Std * photo.Bloom.Std) / 4 + 0.0009 * blur * blur);
}
