namespace WitnessMark.DrawingOffice.Survey.Network.Wear;

/// <summary>
/// What the long tail of wear does to the tests. A normal reading that stands for a worn one has its spread, yet wear reaches
/// one in a thousand at twice the distance at which a normal error does; tests that lean on worn rows allow for that.
/// </summary>
sealed class Tails
{
    /// <summary>
    /// By how much the standard deviation of a worn row is taken larger in tests. Cause: an exponential is passed once in 740 at 5.6 of its
    /// standard deviations from its mean, a normal error at 3; half as much again for the ± of several worn rows together being too small before
    /// they are widened.
    /// </summary>
    const double Longer = 3;

    readonly Dictionary<int, Others> _others;
    readonly double[] _extra;

    Tails(Dictionary<int, Others> others, double[] extra) => (_others, _extra) = (others, extra);

    /// <summary>What all others foretell of a worn row, tails allowed for; null for other rows.</summary>
    public Others? Others(int row) => _others.TryGetValue(row, out var others) ? others : null;

    /// <summary>Variance that the tails add to the residual of a sound row; 0 where no worn row bears on it.</summary>
    public double Of(int row) => _extra.Length == 0 ? 0 : _extra[row];

    public static Tails Of(Adjustment solver, Fit fit, int[] worn)
    {
        if (worn.Length == 0 || fit.Narrow is null) return new Tails([], []);
        fit = fit.Narrow;
        var (others, extra) = (Wear.Others.Of(solver, fit, worn), new double[fit.Weights.Length]);
        var isWorn = worn.ToHashSet();
        foreach (var j in worn)
        {
            var q = solver.Cofactors(fit, solver.Jacobian.ColumnsOf(j), solver.Jacobian.ValuesOf(j));
            var share = (Longer * Longer - 1) * fit.Weights[j] * (1 - OneSided.Share(solver, fit, j));
            for (var r = 0; r < extra.Length; r++)
                if (fit.Weights[r] != 0 && !isWorn.Contains(r)) extra[r] += Math.Pow(solver.Jacobian.Dot(r, q), 2) * share;
            for (var i = 0; i < worn.Length; i++)
            {
                if (worn[i] == j || others[i].Foretold is null) continue;
                var moves = solver.Jacobian.Dot(worn[i], q) / (1 - fit.Weights[worn[i]] * solver.VarianceOfRow(fit, worn[i]));
                others[i] = others[i] with { Variance = others[i].Variance + moves * moves * share };
            }
        }
        // Cause: what rounding leaves of a product of two rows that share nothing.
        for (var r = 0; r < extra.Length; r++)
            if (extra[r] < 1e-9 * solver.Sigma(r) * solver.Sigma(r)) extra[r] = 0;
        return new Tails(worn.Zip(others).ToDictionary(w => w.First, w => w.Second), extra);
    }
}
