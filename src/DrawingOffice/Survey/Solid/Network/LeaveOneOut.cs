using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>
/// For a survey that one reading spoils so far that it comes to no rest: a decimal point slipped, a condition that the part does not
/// keep. The readings that fit worst, as the sketch lies and as a fit lies that heeds the many more than the few, are left out one by
/// one, until the others settle and agree.
/// </summary>
static class LeaveOneOut
{
    /// <summary>Readings tried. Cause: one that spoils all others is far off both in the sketch and in the robust fit, so it is among the first few of one of them.</summary>
    const int MostTried = 12;

    /// <summary>A sum of squares higher by this than the best is worse beyond chance (chi-square of one, one in a thousand).</summary>
    const double Worse = 10.8;

    /// <summary>
    /// The readings each without which all others settle and agree, best first, and the fit without the first; worst are those that fit
    /// worst, whether or not leaving one out mends it.
    /// </summary>
    public static (ImmutableArray<int> Mends, Fit? Fit, ImmutableArray<int> Worst) Find(SolidSolver solver, Fit all, CancellationToken stop)
    {
        var start = SolidStart.From(solver, stop);
        var robust = Heeded(solver, start, stop);
        var worst = Worst(solver, start, robust);
        var found = new List<(int Reading, Fit Fit)>();
        foreach (var reading in worst)
            if (Trial(solver, all, robust, start, reading, stop) is { } fit) found.Add((reading, fit));
        if (found.Count == 0) return ([], null, [.. worst.Take(3)]);

        var best = found.MinBy(f => f.Fit.SumOfSquares).Fit;
        var mends = found.Where(f => f.Fit.SumOfSquares < best.SumOfSquares + Worse).OrderBy(f => f.Fit.SumOfSquares).Select(f => f.Reading);
        return ([.. mends], best, [.. worst.Take(3)]);
    }

    public static Doubts Words(ImmutableArray<int> mends, ImmutableArray<int> worst)
    {
        string Listed(ImmutableArray<int> some) => string.Join(", ", some.Order().Select(i => i + 1));
        if (mends is [var one]) return new(mends, [], [], true, $"Reading {one + 1} is doubtful: with it the readings fit no shape, without it all others agree.");
        return mends.IsEmpty
            ? new(worst, [worst], [], false, $"The readings fit no shape, and leaving out any one of them does not mend it: more than one is wrong, or the sketch is far off. Readings {Listed(worst)} are the worst: look at these first.")
            : new(mends, [mends], [], true, $"At least one of readings {Listed(mends)} is wrong: the readings fit no shape, and without any one of these all others agree. Measure them again.");
    }

    /// <summary>The fit without a reading; null where the others do not settle and agree, or no longer hold the part.</summary>
    static Fit? Trial(SolidSolver solver, Fit all, double[] robust, double[] start, int reading, CancellationToken stop)
    {
        var (weights, coarse) = (solver.Without(new HashSet<int> { reading }), solver.Coarse());
        for (var r = 0; r < coarse.Length; r++) coarse[r] = Math.Min(coarse[r], weights[r]);
        foreach (var from in (double[][])[robust, start])
        {
            stop.ThrowIfCancellationRequested();
            // Coarse first, as every start in space.
            var fit = solver.Adjust(solver.Minimise(from, coarse, stop).X, weights, stop);
            if (fit.Convergence.Converged && fit.Redundancy >= 1 && fit.Free.Length <= all.Free.Length
                && fit.SumOfSquares <= ChiSquare.Quantile(0.999, fit.Redundancy) && Testing.Of(solver, fit) is var tests && Snooping.Largest(solver, fit, tests).Value <= tests.Critical)
                return fit;
        }
        return null;
    }

    /// <summary>From the start to a fit in the manner of least absolute residuals, conditions weighed as readings.</summary>
    static double[] Heeded(SolidSolver solver, double[] start, CancellationToken stop)
    {
        var (x, coarse, residual) = (start, solver.Coarse(), new double[solver.Weights.Length]);
        for (var round = 0; round < 12; round++)
        {
            solver.Evaluate(x, residual);
            var weights = new double[coarse.Length];
            for (var r = 0; r < weights.Length; r++)
                weights[r] = solver.ReadingOf(r) < 0 ? coarse[r] : coarse[r] / Math.Max(1, Math.Abs(residual[r]) * Math.Sqrt(coarse[r]));
            x = solver.Minimise(x, weights, stop, most: 12).X;
        }
        return x;
    }

    static ImmutableArray<int> Worst(SolidSolver solver, double[] start, double[] robust)
    {
        var coarse = solver.Coarse();
        var (sketched, heeded) = (Ranked(solver, start, coarse), Ranked(solver, robust, coarse));
        return [.. heeded.Zip(sketched).SelectMany(p => new[] { p.First, p.Second }).Distinct().Take(MostTried)];
    }

    static IEnumerable<int> Ranked(SolidSolver solver, double[] x, double[] coarse)
    {
        var residual = new double[coarse.Length];
        solver.Evaluate(x, residual);
        return [.. Enumerable.Range(0, residual.Length).Where(r => solver.ReadingOf(r) >= 0 && double.IsFinite(residual[r]))
            .OrderByDescending(r => Math.Abs(residual[r]) * Math.Sqrt(coarse[r])).Select(solver.ReadingOf).Distinct()];
    }
}
