using System.Collections.Immutable;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>What an adjustment says of the readings as a whole and of each.</summary>
static class Findings
{
    public static GlobalTest Global(Fit fit) => Global(fit, fit.Redundancy);

    /// <param name="redundancy">Of the fit, without what its readings say again.</param>
    /// <param name="mayAgreeBetter">Readings share a part of what was stated of each.</param>
    public static GlobalTest Global(Fit fit, int redundancy, bool mayAgreeBetter = false)
    {
        if (redundancy < 1) return new GlobalTest(fit.SumOfSquares, redundancy, 0, double.PositiveInfinity, !Snooping.Contradicts(fit));
        var low = mayAgreeBetter ? 0 : ChiSquare.Quantile(0.025, redundancy);
        var high = ChiSquare.Quantile(0.975, redundancy);
        return new GlobalTest(fit.SumOfSquares, redundancy, low, high, fit.SumOfSquares >= low && fit.SumOfSquares <= high);
    }

    public static ImmutableArray<ReadingResult> Results(Adjustment solver, Fit fit, Testing tests, Doubts doubts, int readings)
    {
        var results = new ReadingResult?[readings];
        for (var r = 0; r < fit.Weights.Length; r++)
        {
            if (solver.ReadingOf(r) is not (>= 0 and var reading)) continue;
            var used = fit.Weights[r] > 0;
            var sigma = solver.Sigma(r);
            var wear = solver.WearOf(r);
            var result = new ReadingResult(
                reading,
                solver.ValueOf(r) + tests.Residual[r],
                tests.Residual[r],
                used ? tests.Redundancy[r] : 0,
                used ? tests.Normalised(r, sigma) : null,
                used && !wear.IsOneSided && tests.IsChecked(r) && solver.IsTestable(r) ? tests.Detectable * sigma / Math.Sqrt(tests.Redundancy[r]) : null,
                doubts.Indices.Contains(reading))
            { Used = used, Says = wear.Says, WearScale = wear.Scale, Foretold = used && tests.Foretold(r) is { } foretold ? solver.ValueOf(r) + foretold : null };
            // A reading of two components: the one that fits worse speaks for it.
            if (results[reading] is not { } other || Math.Abs(result.Normalised ?? 0) > Math.Abs(other.Normalised ?? 0)) results[reading] = result;
        }
        return [.. results.Select(r => r!)];
    }
}
