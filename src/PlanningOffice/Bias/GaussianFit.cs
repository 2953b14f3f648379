namespace WitnessMark.PlanningOffice;

/// <summary>A value seen of effect 0 plus the effects at two places (0 names none), with the variance of its error.</summary>
readonly record struct Seen(double Value, double Variance, int Kind, int System);

/// <summary>
/// Effects with independent normal priors of mean 0, after values of their sums were seen: exact. Held as the mean and the
/// Cholesky factor L of the covariance, so that m + Lz is a draw of all effects together.
/// </summary>
sealed class GaussianFit
{
    readonly double[] _mean;
    readonly double[,] _root;

    GaussianFit(double[] mean, double[,] root, double logEvidence) => (_mean, _root, LogEvidence) = (mean, root, logEvidence);

    /// <summary>ln of the density of what was seen, up to a constant.</summary>
    public double LogEvidence { get; }

    /// <summary>Prior updated by one value after another; the evidence is the product of the one-step predictions.</summary>
    public static GaussianFit Of(ReadOnlySpan<Seen> seen, ReadOnlySpan<double> priorVariance)
    {
        var n = priorVariance.Length;
        var (m, c, g, log) = (new double[n], new double[n, n], new double[n], 0.0);
        for (var i = 0; i < n; i++) c[i, i] = priorVariance[i];
        foreach (var (y, variance, k, s) in seen)
        {
            var e = y - m[0] - (k > 0 ? m[k] : 0) - (s > 0 ? m[s] : 0);
            for (var i = 0; i < n; i++) g[i] = c[i, 0] + (k > 0 ? c[i, k] : 0) + (s > 0 ? c[i, s] : 0);
            var v = g[0] + (k > 0 ? g[k] : 0) + (s > 0 ? g[s] : 0) + variance;
            log -= (Math.Log(v) + e * e / v) / 2;
            for (var i = 0; i < n; i++)
            {
                var gain = g[i] / v;
                m[i] += gain * e;
                for (var j = 0; j <= i; j++) c[j, i] = c[i, j] -= gain * g[j];
            }
        }
        return new(m, Root(c), log);
    }

    /// <summary>Mean and variance of effect 0 plus the chosen two; 0 names none.</summary>
    public (double Mean, double Variance) Sum(int kind, int system)
    {
        var v = 0.0;
        for (var j = 0; j < _mean.Length; j++)
        {
            var row = _root[0, j] + (kind > 0 ? _root[kind, j] : 0) + (system > 0 ? _root[system, j] : 0);
            v += row * row;
        }
        return (_mean[0] + (kind > 0 ? _mean[kind] : 0) + (system > 0 ? _mean[system] : 0), v);
    }

    /// <summary>m + Lz.</summary>
    public void Effects(ReadOnlySpan<double> z, Span<double> effects)
    {
        for (var i = 0; i < _mean.Length; i++)
        {
            var x = _mean[i];
            for (var j = 0; j <= i; j++) x += _root[i, j] * z[j];
            effects[i] = x;
        }
    }

    // An effect without spread of its own leaves a pivot of 0, or of rounding: its column is 0.
    static double[,] Root(double[,] c)
    {
        var n = c.GetLength(0);
        var root = new double[n, n];
        for (var j = 0; j < n; j++)
        {
            var pivot = c[j, j];
            for (var k = 0; k < j; k++) pivot -= root[j, k] * root[j, k];
            if (pivot <= 1e-14 * c[j, j]) continue;
            root[j, j] = Math.Sqrt(pivot);
            for (var i = j + 1; i < n; i++)
            {
                var x = c[i, j];
                for (var k = 0; k < j; k++) x -= root[i, k] * root[j, k];
                root[i, j] = x / root[j, j];
            }
        }
        return root;
    }
}
