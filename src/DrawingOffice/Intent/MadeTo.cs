using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Words;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent;

/// <summary>One made-to size with its odds.</summary>
/// <param name="AlsoCalled">Other names of the same size: 1/16 in is also 16 BG.</param>
/// <param name="Probability">Of this size under any of its names, 0 to 1.</param>
/// <param name="Wear">
/// For each measurement, ordered by facet and then as given: how far wear has moved it if this is the size, mm, 0 or more.
/// </param>
/// <param name="Tail">Two-sided chance of a reading as far off as the worst one; below 0.001 the size does not really explain it.</param>
public sealed record Ranked(Candidate Candidate, ImmutableArray<string> AlsoCalled, double Probability, ImmutableArray<Uncertain> Wear, double Tail)
{
    public string Name => Candidate.Name;

    /// <summary>For over against, a million million at most.</summary>
    public double Odds => Sentences.Bounded(Probability / (1 - Probability));
}

public sealed record OriginOdds(string Name, double Probability);

/// <summary>A measurement that would tell two sizes apart.</summary>
/// <param name="Difference">Between the two in this facet as made, mm or radians.</param>
/// <param name="NeededStd">Standard uncertainty, mm or radians, at which it decides in eight cases of ten.</param>
/// <param name="Std">Standard uncertainty of <paramref name="Instrument"/>, the roughest usual one that is fine enough, or the finest there is.</param>
/// <param name="Chance">That it decides, with that instrument.</param>
/// <param name="ExpectedOdds">Odds for the likelier size if it is the right one, geometric mean, with that instrument; a million million at most.</param>
public sealed record Decider(Facet Facet, double Difference, double NeededStd, string Instrument, double Std, double Chance, double ExpectedOdds, string Words);

/// <summary>Two sizes that the measurements do not tell apart, and what would.</summary>
/// <param name="Odds">Of the first against the second, below the practice's decisive odds.</param>
/// <param name="Deciders">Best first; empty when no measurement of this item can decide.</param>
/// <param name="MoreItems">How many more equal items would decide in eight cases of ten; null where a decider serves, or over 20 would be needed.</param>
/// <param name="ByOrigin">The same odds if the origin were known.</param>
/// <param name="OriginChance">That knowing the origin alone would decide.</param>
public sealed record Doubt(
    string First,
    string Second,
    double Odds,
    ImmutableArray<Decider> Deciders,
    int? MoreItems,
    ImmutableArray<OddsByOrigin> ByOrigin,
    double OriginChance,
    string Words);

/// <summary>What two sizes' odds would be if the origin were known.</summary>
public sealed record OddsByOrigin(string Origin, double Odds);

/// <summary>What a part was made to.</summary>
/// <param name="Ranked">Likeliest first; sizes below one in a million are left out.</param>
/// <param name="OffList">Chance that it was made to none of the listed sizes.</param>
/// <param name="OffListSize">What it would then seem made to, mm (radians of an angle).</param>
/// <param name="Next">The measurement that settles most of the doubt at once; null where there is none, or nothing is in doubt.</param>
/// <param name="Words">The verdict in a sentence or two.</param>
public sealed record MadeTo(
    Question Question,
    ImmutableArray<Ranked> Ranked,
    double OffList,
    Uncertain OffListSize,
    ImmutableArray<Doubt> Doubts,
    Decider? Next,
    ImmutableArray<string> Cautions,
    string Words)
{
    /// <summary>The likeliest listed size; null when none is near.</summary>
    public Ranked? Best => Ranked.IsEmpty ? null : Ranked[0];

    /// <summary>The best size stands clear of every other, and holds four chances in five against all else together.</summary>
    public bool Told => Best is { Probability: >= 0.8 } && Doubts.IsEmpty;
}

/// <summary>Several things off one vehicle, weighed together: what one says of the origin counts for all.</summary>
public sealed record Family(ImmutableArray<OriginOdds> Origins, ImmutableArray<MadeTo> Members);
