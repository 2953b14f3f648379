using System.Collections.Immutable;

namespace WitnessMark.Stores.Judging;

/// <summary>A figure as low, likely and high, with where it comes from: a quote, an own card, common practice.</summary>
public sealed record Estimate(double Low, double Likely, double High, string Source)
{
    /// <summary>PERT mean, (low + 4 likely + high) / 6 (D. G. Malcolm and others, Operations Research 7, 1959).</summary>
    public double Expected => (Low + 4 * Likely + High) / 6;

    public bool Rises => Low >= 0 && Low <= Likely && Likely <= High && double.IsFinite(High);
}

/// <summary>A figure from 0 to 1 with the reason for it.</summary>
public sealed record Score(double Value, string Why, string Source);

/// <summary>What one route would take, as far as it is known.</summary>
/// <param name="Hours">Own hours; null when nothing tells them.</param>
/// <param name="Money">In the shop's currency; null when nothing tells it.</param>
/// <param name="WaitDays">Calendar days of waiting for others before or between the own work.</param>
/// <param name="Certainty">Chance that it turns out right the first time.</param>
/// <param name="Originality">1: the part the vehicle left the works with.</param>
/// <param name="Lacking">What is missing to do it or to know it better: a quote, a drawing, a lathe.</param>
/// <param name="Barred">Why it cannot be done at all; null when it can.</param>
public sealed record RouteOutlook(
    Route Route, Estimate? Hours, Estimate? Money, Estimate WaitDays, Score Certainty, Score Originality,
    ImmutableArray<string> Lacking, string? Barred)
{
    public bool Known => Barred is null && Hours is not null && Money is not null;
}
