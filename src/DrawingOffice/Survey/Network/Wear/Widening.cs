namespace WitnessMark.DrawingOffice.Survey.Network.Wear;

/// <summary>
/// The true spread of what worn rows compute. Rows that bound the same thing from the same side count that bound twice over, and
/// the ± would come out up to a third too small. How the means answer to a small pull does not suffer from that, and the covariance of a
/// distribution is that answer (linear response; Opper and Winther 2004): it is worked out, and the weights are eased until the ± agree with it.
/// The means stay where they are.
/// </summary>
static class Widening
{
    const int Rounds = 60;

    /// <summary>Cause: with these steps central differences of the smooth moments are good to six digits.</summary>
    const double Step = 1e-4;

    public static (double[] Weights, double[] Shift) Of(Adjustment solver, Fit fit, int[] worn)
    {
        var (weights, shift) = ((double[])fit.Weights.Clone(), (double[])fit.Shift!.Clone());
        var tied = worn.Zip(Others.Of(solver, fit, worn)).Where(w => w.Second.Foretold is not null).ToArray();
        int[] rows = [.. tied.Select(t => t.First)];
        if (rows.Length < 2) return (weights, shift);
        var residual = new double[weights.Length];
        solver.Evaluate(fit.X, residual);
        var between = Between(solver, fit, rows);
        var wanted = Spread(between, [.. tied.Select(t => Moments.Of(solver, t.First, t.Second))], [.. rows.Select(r => residual[r])]);
        var pulls = rows.Select(r => weights[r] * (shift[r] - residual[r])).ToArray();
        for (var round = 0; round < Rounds; round++)
        {
            var change = 0.0;
            var now = solver.Variances(fit with { Weights = (double[])weights.Clone() }, rows);
            for (var i = 0; i < rows.Length; i++)
            {
                var ease = Math.Clamp(now[i] / wanted[i], 0.25, 1);
                var least = Site.Least * Site.Alone(solver.Sigma(rows[i]), solver.WearOf(rows[i])).Weight;
                var weight = Math.Max(least, ease * weights[rows[i]]);
                change = Math.Max(change, Math.Abs(weight / weights[rows[i]] - 1));
                weights[rows[i]] = weight;
            }
            // Cause: a hundredth of a variance is half a hundredth of a ±.
            if (change < 0.01) break;
        }
        for (var i = 0; i < rows.Length; i++) shift[rows[i]] = residual[rows[i]] + pulls[i] / weights[rows[i]];
        return (weights, shift);
    }

    /// <summary>Covariance of what the rows compute.</summary>
    public static double[,] Between(Adjustment solver, Fit fit, int[] rows)
    {
        var c = new double[rows.Length, rows.Length];
        for (var j = 0; j < rows.Length; j++)
        {
            var q = solver.Cofactors(fit, solver.Jacobian.ColumnsOf(rows[j]), solver.Jacobian.ValuesOf(rows[j]));
            for (var i = 0; i < rows.Length; i++) c[i, j] = solver.Jacobian.Dot(rows[i], q);
        }
        return c;
    }

    /// <summary>Variance of each row by linear response: a 2k × 2k system in the mean and variance that the others foretell of each row.</summary>
    static double[] Spread(double[,] c, Moments[] m, double[] residual)
    {
        var k = m.Length;
        var (matrix, right) = (new double[2 * k, 2 * k], new double[2 * k, k]);
        for (var i = 0; i < k; i++)
        {
            (matrix[i, i], matrix[i, k + i]) = (m[i].MeanByMean, m[i].MeanByVariance);
            (matrix[k + i, i], matrix[k + i, k + i]) = (m[i].VarianceByMean, m[i].VarianceByVariance);
            for (var j = 0; j < k; j++)
            {
                matrix[i, j] -= c[i, j] * (m[j].PullByMean - residual[j] * m[j].WeightByMean);
                matrix[i, k + j] -= c[i, j] * (m[j].PullByVariance - residual[j] * m[j].WeightByVariance);
                matrix[k + i, j] += c[i, j] * c[i, j] * m[j].WeightByMean;
                matrix[k + i, k + j] += c[i, j] * c[i, j] * m[j].WeightByVariance;
                right[i, j] = c[i, j];
            }
        }
        var spread = new double[k];
        var solved = Dense.Solve(matrix, right);
        for (var i = 0; i < k; i++)
        {
            var answer = solved is null ? 0 : m[i].MeanByMean * solved[i, i] + m[i].MeanByVariance * solved[k + i, i];
            // Never finer than found without it; nor, where the system is near singular, beyond what one row alone would leave.
            spread[i] = double.IsFinite(answer) ? Math.Clamp(answer, c[i, i], Math.Max(c[i, i], m[i].Largest)) : c[i, i];
        }
        return spread;
    }

    /// <summary>How mean and variance of one row, and the normal reading that stands for it, answer to what the others foretell.</summary>
    readonly record struct Moments(
        double MeanByMean, double MeanByVariance, double VarianceByMean, double VarianceByVariance,
        double PullByMean, double PullByVariance, double WeightByMean, double WeightByVariance, double Largest)
    {
        public static Moments Of(Adjustment solver, int row, Others others)
        {
            var (sigma, wear) = (solver.Sigma(row), solver.WearOf(row));
            var (mean, variance) = (others.Foretold!.Value, others.Variance);
            var (h, g) = (Step * Math.Sqrt(variance + sigma * sigma), Step * variance);
            var (up, down) = (At(mean + h, variance), At(mean - h, variance));
            var (wide, tight) = (At(mean, variance + g), At(mean, variance - g));
            double ByMean(Func<Values, double> f) => (f(up) - f(down)) / (2 * h);
            double ByVariance(Func<Values, double> f) => (f(wide) - f(tight)) / (2 * g);
            return new Moments(
                ByMean(v => v.Mean), ByVariance(v => v.Mean), ByMean(v => v.Variance), ByVariance(v => v.Variance),
                ByMean(v => v.Pull), ByVariance(v => v.Pull), ByMean(v => v.Weight), ByVariance(v => v.Weight),
                sigma * sigma + wear.Scale * wear.Scale);

            Values At(double foretold, double spread)
            {
                var site = Site.Given(foretold, spread, sigma, wear);
                var pull = site.Weight * site.Shift;
                var total = 1 / (1 / spread + site.Weight);
                return new Values((foretold / spread + pull) * total, total, pull, site.Weight);
            }
        }

        readonly record struct Values(double Mean, double Variance, double Pull, double Weight);
    }
}

/// <summary>Small full systems.</summary>
static class Dense
{
    /// <summary>A x = b for several right sides, by elimination with row exchange; null where A is singular. Both are overwritten.</summary>
    public static double[,]? Solve(double[,] a, double[,] b)
    {
        var (n, m) = (a.GetLength(0), b.GetLength(1));
        for (var k = 0; k < n; k++)
        {
            var pivot = k;
            for (var i = k + 1; i < n; i++)
                if (Math.Abs(a[i, k]) > Math.Abs(a[pivot, k])) pivot = i;
            if (!(Math.Abs(a[pivot, k]) > 0)) return null;
            for (var j = 0; j < n; j++) (a[k, j], a[pivot, j]) = (a[pivot, j], a[k, j]);
            for (var j = 0; j < m; j++) (b[k, j], b[pivot, j]) = (b[pivot, j], b[k, j]);
            for (var i = k + 1; i < n; i++)
            {
                var factor = a[i, k] / a[k, k];
                if (factor == 0) continue;
                for (var j = k; j < n; j++) a[i, j] -= factor * a[k, j];
                for (var j = 0; j < m; j++) b[i, j] -= factor * b[k, j];
            }
        }
        for (var k = n - 1; k >= 0; k--)
            for (var j = 0; j < m; j++)
            {
                for (var i = k + 1; i < n; i++) b[k, j] -= a[k, i] * b[i, j];
                b[k, j] /= a[k, k];
            }
        return b;
    }
}
