using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Patterns.Weights;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Search;

/// <summary>What the person refused: nothing may be taken that would make it true after all.</summary>
sealed class Barred(Shape shape, ImmutableArray<Hypothesis> refused)
{
    public bool IsEmpty => refused.IsEmpty;

    public bool Breaks(Belief belief) => refused.Any(h =>
        Weigher.Of([.. h.Parts.Select(p => Slope.Of(p, shape, belief))], belief, belief.X) is { Implied: true });
}
