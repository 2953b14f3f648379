using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network;

namespace WitnessMark.DrawingOffice.Survey;

/// <summary>What to measure next, and whether it is enough.</summary>
/// <param name="Enough">Everything is held, one way round, and every dimension is within its wanted ±.</param>
/// <param name="LargestStd">Largest standard uncertainty of any centre distance or size, mm; infinite while something is loose.</param>
/// <param name="Words">One sentence.</param>
public sealed record NextAdvice(bool Enough, double LargestStd, string Words, ImmutableArray<NextReading> Readings);

/// <summary>An instrument as far as choosing needs it: what it reads, how far it reaches and its standard uncertainty.</summary>
/// <param name="Heights">Reads heights over the surface plate, and nothing else.</param>
public sealed record Reach(string Instrument, double Longest, double Std, bool Angles = false, bool Heights = false);

/// <summary>
/// Ranks every admissible reading between the features by what it would settle: first what holds a loose feature, then what
/// tells a mirror from its image, then what lowers the largest uncertainty most.
/// </summary>
/// <remarks>
/// A reading with derivatives g and ± s changes the variance of a dimension d by −(dᵀQg)² / (s² + gᵀQg): a rank-one update of
/// the covariance Q, exact to first order, so nothing is solved again. The largest uncertainty is followed over the
/// <see cref="Ranking.Watched"/> worst dimensions.
/// </remarks>
public static class Next
{
    /// <summary>A calliper to 200 mm, a tape beyond, a protractor for angles (common practice).</summary>
    public static ImmutableArray<Reach> Usual { get; } =
    [
        new("calliper", 200, 0.02), new("tape", 5000, 0.5), new("protractor", 0, Math.PI / 360, Angles: true),
    ];

    /// <param name="wantedStd">Wanted standard uncertainty of every dimension, mm.</param>
    public static NextAdvice Advise(Plan plan, double wantedStd, int most = 5, ImmutableArray<Reach> instruments = default, CancellationToken stop = default)
    {
        var candidates = new Candidates(plan.Solver, plan.Fit, instruments.IsDefaultOrEmpty ? Usual : instruments);
        if (plan.LooseFreedoms > 0)
        {
            var holding = candidates.Holding(most, stop);
            return new NextAdvice(false, double.PositiveInfinity, $"{Names(plan)} still loose: {plan.LooseFreedoms} more {(plan.LooseFreedoms == 1 ? "reading is" : "readings are")} the least.", holding);
        }
        var (largest, worst, lowering) = candidates.Lowering(most, stop);
        if (!plan.Mirrors.IsEmpty) return new NextAdvice(false, largest, MirrorWords(plan.Mirrors[0]), [.. candidates.Deciding(plan.Mirrors), .. lowering]);
        return largest <= wantedStd
            ? new NextAdvice(true, largest, "Enough: every dimension is within its wanted ±.", lowering)
            : new NextAdvice(false, largest, FormattableString.Invariant($"The least sure is {worst}: ± {2 * largest:0.###} mm."), lowering);
    }

    static string Names(Plan plan) => string.Join(", ", plan.Loose.SelectMany(g => g.Ids)) + (plan.Loose.Sum(g => g.Ids.Length) == 1 ? " is" : " are");

    static string MirrorWords(Mirror mirror) =>
        $"{string.Join(", ", mirror.Flips)} may lie on either side{(mirror.About.Length == 2 ? $" of the line {mirror.About[0]}-{mirror.About[1]}" : "")}; one reading decides.";
}
