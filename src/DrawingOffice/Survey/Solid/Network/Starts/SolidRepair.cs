using WitnessMark.Maths.LeastSquares;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>Gets an adjustment in space out of a wrong valley: the worst features are fitted anew from other guesses, and what lowers the sum of squares is kept.</summary>
static class SolidRepair
{
    const int MostRounds = 10;

    /// <summary>Sum of squares a reading from which a sketched shape is doubted at all; cause as in the flat survey.</summary>
    const double Hopeless = 30;

    public static Minimum Improve(SolidSolver solver, double[] x, CancellationToken stop)
    {
        var weights = solver.Weights;
        var first = solver.Minimise(x, weights, stop);
        if (!IsPoor(first.SumOfSquares, weights)) return first;
        var sketched = solver.Layout.Features.Any(f => f.Sketch is not null);
        if (sketched && first.SumOfSquares < Hopeless * weights.Length) return first;
        var (best, fit, coarse) = (first, new LocalFit(solver), solver.Coarse());
        for (var round = 0; round < MostRounds && IsPoor(best.SumOfSquares, weights); round++)
        {
            var better = Worst(solver, fit, best.X).Select(f => Anew(solver, fit, f, best, coarse, stop)).FirstOrDefault(m => m is not null);
            if (better is null) break;
            best = better;
        }
        return sketched && IsPoor(best.SumOfSquares, weights) && best.SumOfSquares > 0.1 * first.SumOfSquares ? first : best;
    }

    /// <summary>The survey adjusted with one feature laid elsewhere, where that fits clearly better.</summary>
    static Minimum? Anew(SolidSolver solver, LocalFit fit, int feature, Minimum best, double[] coarse, CancellationToken stop)
    {
        var ties = fit.Ties(feature, _ => true, _ => true);
        var here = fit.Sum(best.X, ties, solver.Weights);
        var x = (double[])best.X.Clone();
        var trials = new List<(double Sum, double[] X)>();
        foreach (var _ in Guesses.Lay(solver, feature, x, ties))
        {
            stop.ThrowIfCancellationRequested();
            var trial = (double[])x.Clone();
            trials.Add((fit.Settle(feature, trial, ties, coarse, double.PositiveInfinity), trial));
        }
        foreach (var (sum, trial) in trials.OrderBy(t => t.Sum).Take(3))
        {
            if (sum > here) break;
            var end = solver.Minimise(solver.Minimise(trial, coarse, stop).X, solver.Weights, stop);
            if (end.SumOfSquares < 0.9 * best.SumOfSquares) return end;
        }
        return null;
    }

    static bool IsPoor(double sum, double[] weights) => !(sum <= ChiSquare.Quantile(0.999, Math.Max(1, weights.Length)));

    static IEnumerable<int> Worst(SolidSolver solver, LocalFit fit, double[] x) =>
        Enumerable.Range(0, solver.Layout.Features.Length).Where(f => solver.Layout.Unknowns(f) > 0)
            .OrderByDescending(f => fit.Sum(x, [.. fit.Rows(f)], solver.Weights)).Take(10).ToList();
}
