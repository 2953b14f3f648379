using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// A second opinion on gross errors that does not depend on the order in which readings are set aside: iteratively re-weighted
/// least squares, first in the manner of least absolute residuals, then with Tukey's biweight, on residuals made comparable by √r.
/// </summary>
static class Robust
{
    /// <summary>Biweight's limit: 4.685 gives 95 % efficiency with normal errors (Holland and Welsch 1977).</summary>
    const double Limit = 4.685;

    /// <summary>Readings whose residual from the robust fit is larger than foretold.</summary>
    public static ImmutableArray<int> Suspects(Adjustment solver, Fit start, CancellationToken stop)
    {
        var x = start.X;
        var redundancy = Testing.Of(solver, start).Redundancy;
        var residual = new double[start.Weights.Length];
        for (var round = 0; round < 24; round++)
        {
            solver.Evaluate(x, residual);
            var weights = (double[])start.Weights.Clone();
            for (var r = 0; r < start.Weights.Length; r++)
            {
                if (weights[r] == 0 || !solver.IsTestable(r)) continue;
                var u = Math.Abs(solver.Against(r, residual[r])) / (solver.Sigma(r) * Math.Sqrt(Math.Max(redundancy[r], 0.05)));
                weights[r] *= round < 12 ? 1 / Math.Max(u, 0.5) : Math.Max(1e-4, Biweight(u));
            }
            x = solver.Minimise(x, weights, stop, start.Shift).X;
        }
        solver.Evaluate(x, residual);
        var critical = Testing.Of(solver, start).Critical;
        var far = Enumerable.Range(0, start.Weights.Length)
            .Where(r => start.Weights[r] > 0 && solver.IsTestable(r) && Math.Abs(solver.Against(r, residual[r])) > critical * solver.Sigma(r))
            .Select(r => solver.ReadingOf(r)).Distinct().ToHashSet();
        return Contradicted(solver, start, x, far, stop);
    }

    /// <summary>Of the readings far from the robust fit, those that a plain adjustment of all others contradicts: |v| over its predicted spread, σ² + aᵀQa.</summary>
    static ImmutableArray<int> Contradicted(Adjustment solver, Fit start, double[] x, HashSet<int> far, CancellationToken stop)
    {
        if (far.Count == 0) return [];
        var jacobian = solver.Jacobian;
        var others = solver.Adjust(x, solver.Without(far), stop);
        var critical = Testing.Of(solver, start).Critical;
        var residual = new double[start.Weights.Length];
        solver.Evaluate(others.X, residual);
        return [.. Enumerable.Range(0, residual.Length)
            .Where(r => far.Contains(solver.ReadingOf(r)) && !Adjustment.Moves(others, jacobian.ColumnsOf(r), jacobian.ValuesOf(r)))
            .Where(r => Math.Abs(solver.Against(r, residual[r])) > critical * Math.Sqrt(solver.Sigma(r) * solver.Sigma(r) + solver.Variance(others, jacobian.ColumnsOf(r), jacobian.ValuesOf(r))))
            .Select(r => solver.ReadingOf(r)).Distinct().Order()];
    }

    static double Biweight(double u) => u < Limit ? Math.Pow(1 - u * u / (Limit * Limit), 2) : 0;
}
