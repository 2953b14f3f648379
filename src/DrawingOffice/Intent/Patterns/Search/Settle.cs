using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Patterns.Weights;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Search;

/// <summary>
/// Conditioned adjustment: the shape nearest to the readings, in the measure of readings and making together, on which every
/// condition holds exactly. Each round makes the conditions linear where the last one ended, and takes them in one by one.
/// </summary>
static class Settle
{
    const int MostRounds = 8;

    /// <summary>mm. Cause: far below any figure written, and a tenth of what tells two stations apart; two rounds reach it.</summary>
    const double Held = 1e-6;

    /// <param name="Belief">At the solution, and its covariance under the conditions.</param>
    /// <param name="Left">Largest value that a condition keeps, mm or rad.</param>
    /// <param name="Rank">Independent conditions.</param>
    public readonly record struct Settled(Belief Belief, double ChiSquare, int Rank, double Left);

    /// <param name="near">Where the conditions are made linear first: the nearer to the solution, the fewer rounds.</param>
    public static Settled On(Shape shape, Spread spread, ImmutableArray<Tie> conditions, double[]? near = null)
    {
        var at = near ?? shape.Start;
        for (var round = 1; ; round++)
        {
            var belief = Belief.Of(shape.Start, spread);
            var (chi, rank) = (0.0, 0);
            var expand = Belief.Of(at, spread);
            foreach (var condition in conditions)
            {
                var slope = Slope.Of(condition, shape, expand);
                var value = slope.At(at, belief.X);
                var variance = belief.Now.Covariance(slope.Columns, slope.Rates, slope.Columns, slope.Rates);
                if (!(variance > Math.Max(Weigher.Certain * 1e-3 * slope.Before, Weigher.Rounding))) continue;
                chi += value * value / variance;
                rank++;
                belief.Hold(slope, value, variance);
            }
            at = belief.X;
            var left = conditions.Select(c => Math.Abs(c.Of(at))).DefaultIfEmpty(0).Max();
            if (left < Held || round == MostRounds) return new(belief, chi, rank, left);
        }
    }
}
