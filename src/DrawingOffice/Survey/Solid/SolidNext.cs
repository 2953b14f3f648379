using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Solid.Network;

namespace WitnessMark.DrawingOffice.Survey.Solid;

/// <summary>A reading worth taking next on a part in space.</summary>
/// <param name="Expected">What it will show about, mm or radians.</param>
/// <param name="Gain">Free motions it removes (whole numbers), else how far the largest wanted uncertainty falls, mm.</param>
public sealed record SolidNextReading(SolidReadingKind Kind, string From, string? To, double Expected, string Instrument, double Gain, string Words);

/// <summary>What to measure next, and whether it is enough.</summary>
/// <param name="Enough">Everything is held, one way round, and every dimension is within its wanted ±.</param>
/// <param name="LargestStd">Largest standard uncertainty of any centre distance or size, mm; infinite while something is loose.</param>
public sealed record SolidAdvice(bool Enough, double LargestStd, string Words, ImmutableArray<SolidNextReading> Readings);

/// <summary>
/// Ranks the admissible readings between the features of a part in space, as <see cref="Next"/> does on a flat one: what holds a
/// loose feature, what tells a second shape from the first, what lowers the largest uncertainty. Heights are offered in set-ups that stand.
/// </summary>
public static class SolidNext
{
    /// <summary>A calliper to 200 mm, a height gauge to 300, a tape beyond, a protractor for angles (common practice).</summary>
    public static ImmutableArray<Reach> Usual { get; } = [.. Next.Usual, new("height gauge", 300, 0.02, Heights: true)];

    /// <param name="wantedStd">Wanted standard uncertainty of every dimension, mm.</param>
    public static SolidAdvice Advise(SolidPlan plan, double wantedStd, int most = 5, ImmutableArray<Reach> instruments = default, CancellationToken stop = default)
    {
        var candidates = new SolidCandidates(plan.Solver, plan.Fit, instruments.IsDefaultOrEmpty ? Usual : instruments);
        // A set-up or a frame that can still tilt serves no dimension: it does not make the part loose.
        string[] loose = [.. plan.Loose.SelectMany(g => g.Ids).Where(id => plan.Of(id).Kind != SolidKind.SetUp)];
        if (loose.Length > 0)
            return new SolidAdvice(false, double.PositiveInfinity, $"{string.Join(", ", loose)} {(loose.Length == 1 ? "is" : "are")} still loose: {plan.LooseFreedoms} more {(plan.LooseFreedoms == 1 ? "reading is" : "readings are")} the least.", candidates.Holding(most, stop));
        var (largest, worst, lowering) = candidates.Lowering(most, stop);
        if (!plan.Mirrors.IsEmpty)
            return new SolidAdvice(false, largest, $"{string.Join(", ", plan.Mirrors[0].Flips)} may lie on either side{About(plan.Mirrors[0])}; one reading decides.", [.. candidates.Deciding(plan.Mirrors), .. lowering]);
        return largest <= wantedStd
            ? new SolidAdvice(true, largest, "Enough: every dimension is within its wanted ±.", lowering)
            : new SolidAdvice(false, largest, FormattableString.Invariant($"The least sure is {worst}: ± {2 * largest:0.###} mm."), lowering);
    }

    static string About(SolidMirror mirror) => mirror.About.Length switch
    {
        0 => "",
        1 => $" of face {mirror.About[0]}",
        _ => $" of the plane through {string.Join(", ", mirror.About)}",
    };
}
