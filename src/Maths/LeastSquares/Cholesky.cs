namespace WitnessMark.Maths.LeastSquares;

/// <summary>
/// Small symmetric systems by Cholesky, in place. For the few unknowns of a step, line or circle: their normal equations are scaled and
/// damped, and each step's right side comes from the residuals, so what squaring loses is won back by the next step.
/// </summary>
public static class Cholesky
{
    /// <summary>Solves a x = b; both are overwritten, b by x. False when the matrix is not positive definite.</summary>
    /// <param name="a">n x n by rows, n the length of b; the lower half is read.</param>
    public static bool Solve(Span<double> a, Span<double> b)
    {
        if (!Factor(a, b.Length)) return false;
        Substitute(a, b);
        return true;
    }

    /// <summary>The x of matrix · x = right, both left as they are; not-a-numbers when the matrix is not positive definite.</summary>
    /// <param name="matrix">n x n, n the length of right; the lower half is read.</param>
    public static double[] Solve(double[,] matrix, double[] right)
    {
        var (a, x) = (matrix.Cast<double>().ToArray(), (double[])right.Clone());
        if (!Solve(a, x)) Array.Fill(x, double.NaN);
        return x;
    }

    /// <summary>The inverse by rows, or null.</summary>
    public static double[]? Inverse(ReadOnlySpan<double> matrix, int n)
    {
        var (a, inverse, column) = (matrix.ToArray(), new double[n * n], new double[n]);
        if (!Factor(a, n)) return null;
        for (var c = 0; c < n; c++)
        {
            Array.Clear(column);
            column[c] = 1;
            Substitute(a, column);
            for (var r = 0; r < n; r++) inverse[r * n + c] = column[r];
        }
        return inverse;
    }

    static bool Factor(Span<double> a, int n)
    {
        for (var j = 0; j < n; j++)
        {
            var pivot = a[j * n + j];
            for (var k = 0; k < j; k++) pivot -= a[j * n + k] * a[j * n + k];
            if (!(pivot > 0) || !double.IsFinite(pivot)) return false;
            pivot = a[j * n + j] = Math.Sqrt(pivot);
            for (var i = j + 1; i < n; i++)
            {
                var sum = a[i * n + j];
                for (var k = 0; k < j; k++) sum -= a[i * n + k] * a[j * n + k];
                a[i * n + j] = sum / pivot;
            }
        }
        return true;
    }

    static void Substitute(ReadOnlySpan<double> a, Span<double> b)
    {
        var n = b.Length;
        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k < i; k++) b[i] -= a[i * n + k] * b[k];
            b[i] /= a[i * n + i];
        }
        for (var i = n - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < n; k++) b[i] -= a[k * n + i] * b[k];
            b[i] /= a[i * n + i];
        }
    }
}
