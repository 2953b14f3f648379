namespace WitnessMark.DrawingOffice.Sections;

/// <summary>Small symmetric positive systems, one row per cell: Cholesky, which needs no pivots there.</summary>
static class Solve
{
    public static double[] Of(double[,] matrix, double[] right)
    {
        var n = right.Length;
        var l = new double[n, n];
        for (var i = 0; i < n; i++)
            for (var j = 0; j <= i; j++)
            {
                var sum = matrix[i, j];
                for (var k = 0; k < j; k++) sum -= l[i, k] * l[j, k];
                l[i, j] = i == j ? Math.Sqrt(sum) : sum / l[j, j];
            }
        var x = (double[])right.Clone();
        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k < i; k++) x[i] -= l[i, k] * x[k];
            x[i] /= l[i, i];
        }
        for (var i = n - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < n; k++) x[i] -= l[k, i] * x[k];
            x[i] /= l[i, i];
        }
        return x;
    }
}
