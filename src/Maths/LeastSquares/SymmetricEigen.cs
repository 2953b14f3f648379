namespace WitnessMark.Maths.LeastSquares;

/// <summary>Eigenvalues of a small dense symmetric matrix by cyclic Jacobi rotations; good to rounding for n up to about 100.</summary>
public static class SymmetricEigen
{
    /// <param name="matrix">Symmetric; left untouched.</param>
    /// <returns>Eigenvalues ascending; column k of the vectors belongs to value k.</returns>
    public static (double[] Values, double[,] Vectors) Of(double[,] matrix)
    {
        var n = matrix.GetLength(0);
        var a = (double[,])matrix.Clone();
        var v = new double[n, n];
        for (var i = 0; i < n; i++) v[i, i] = 1;
        for (var sweep = 0; sweep < 60; sweep++)
        {
            double off = 0, all = 0;
            for (var i = 0; i < n; i++)
                for (var k = 0; k < n; k++)
                {
                    all += a[i, k] * a[i, k];
                    if (i != k) off += a[i, k] * a[i, k];
                }
            if (off <= 1e-32 * all) break;
            for (var p = 0; p < n; p++)
                for (var q = p + 1; q < n; q++) Rotate(a, v, p, q);
        }
        var order = Enumerable.Range(0, n).OrderBy(i => a[i, i]).ToArray();
        var vectors = new double[n, n];
        for (var k = 0; k < n; k++)
            for (var i = 0; i < n; i++) vectors[i, k] = v[i, order[k]];
        return ([.. order.Select(i => a[i, i])], vectors);
    }

    static void Rotate(double[,] a, double[,] v, int p, int q)
    {
        if (a[p, q] == 0) return;
        var theta = (a[q, q] - a[p, p]) / (2 * a[p, q]);
        var t = (theta < 0 ? -1 : 1) / (Math.Abs(theta) + Math.Sqrt(1 + theta * theta));
        var c = 1 / Math.Sqrt(1 + t * t);
        var s = t * c;
        var n = a.GetLength(0);
        for (var k = 0; k < n; k++) (a[k, p], a[k, q]) = (c * a[k, p] - s * a[k, q], s * a[k, p] + c * a[k, q]);
        for (var k = 0; k < n; k++) (a[p, k], a[q, k]) = (c * a[p, k] - s * a[q, k], s * a[p, k] + c * a[q, k]);
        for (var k = 0; k < n; k++) (v[k, p], v[k, q]) = (c * v[k, p] - s * v[k, q], s * v[k, p] + c * v[k, q]);
    }
}
