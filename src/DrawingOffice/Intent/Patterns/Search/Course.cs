using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Patterns.Weights;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Search;

/// <summary>A hypothesis that was taken, with its evidence at that moment.</summary>
/// <param name="LogOdds">Prior odds and evidence together.</param>
sealed record Taken(Hypothesis Hypothesis, Verdict Verdict, double LogOdds, Move? Moved, bool Forced);

/// <summary>One way of explaining the plan, as far as it has come.</summary>
/// <param name="Belief">Solved again with everything taken holding exactly.</param>
/// <param name="Given">What holds from the start.</param>
/// <param name="Log">Logarithm of the odds of the whole way against nothing being meant.</param>
sealed record Course(Shape Shape, Belief Belief, ImmutableArray<Tie> Given, ImmutableArray<Taken> Taken, double Log)
{
    /// <summary>Every condition that holds.</summary>
    public ImmutableArray<Tie> Conditions => [.. Given, .. Taken.SelectMany(t => t.Hypothesis.Parts)];

    /// <summary>The same taken anew in this order, each with the evidence that it has after those before it.</summary>
    public static Course Of(Shape shape, Spread spread, ImmutableArray<Tie> given, IEnumerable<Taken> taken, Func<Hypothesis, double> priorPerFreedom)
    {
        var start = Settle.On(shape, spread, given).Belief;
        var (belief, log) = (start.Copy(), 0.0);
        var all = ImmutableArray.CreateBuilder<Taken>();
        foreach (var t in taken)
        {
            var from = (double[])belief.X.Clone();
            ImmutableArray<Slope> slopes = [.. t.Hypothesis.Parts.Select(p => Slope.Of(p, shape, belief))];
            var verdict = Weigher.Of(slopes, belief, from);
            if (verdict.Contradicts && !t.Forced) continue;
            Greedy.Hold(belief, slopes, from);
            var odds = verdict.Freedom == 0 ? 0 : verdict.Log + t.Hypothesis.LogPrior + verdict.Freedom * priorPerFreedom(t.Hypothesis);
            all.Add(t with { Verdict = verdict, LogOdds = odds, Moved = Greedy.MovedMost(shape, from, belief.X) });
            if (!t.Forced) log += odds;
        }
        return new(shape, belief, given, all.ToImmutable(), log);
    }
}
