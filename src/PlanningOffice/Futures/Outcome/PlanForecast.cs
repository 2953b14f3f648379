using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>The whole plan over many simulated futures.</summary>
/// <param name="Today">The day all futures begin on.</param>
/// <param name="Unfinished">Share of the futures that did not end within <paramref name="Horizon"/>; their finish counts as that day.</param>
/// <param name="Hours">Own hours still to come.</param>
/// <param name="Money">Still to be spent, in the purse's currency.</param>
/// <param name="Bars">One for each open job, in the order of the priority list.</param>
/// <param name="Drivers">What makes the finish uncertain, the greatest share first.</param>
/// <param name="Discoveries">One for each discovery of an open job.</param>
/// <param name="InWords">What drives the P90, a sentence each.</param>
public sealed record PlanForecast(
    DateOnly Today, DateOnly Horizon, double Unfinished, DateSpread Finish, ImmutableArray<MilestoneForecast> Milestones,
    Spread Hours, Spread Money, CashCurve Cash, ImmutableArray<JobBar> Bars, ImmutableArray<Driver> Drivers,
    ImmutableArray<DiscoveryForecast> Discoveries, ImmutableArray<string> InWords, ImmutableArray<string> Cautions)
{
    public int Futures => Finish.Days.Futures;
}

/// <summary>A day over many futures.</summary>
/// <param name="Days">Calendar days from today, with the standard errors that the number of futures leaves.</param>
public sealed record DateSpread(DateOnly Today, Spread Days)
{
    public DateOnly P10 => On(Days.P10.Value);

    public DateOnly P50 => On(Days.P50.Value);

    public DateOnly P90 => On(Days.P90.Value);

    DateOnly On(double days) => Today.AddDays((int)days);
}

/// <param name="OddsInTime">Share of futures that reach it on or before the wanted day; null when none is wanted.</param>
public sealed record MilestoneForecast(Guid Id, string Name, DateSpread Reached, DateOnly? Wanted, double? OddsInTime);

/// <summary>When a job begins and is over (with its cure or sent-out work), for a bar chart.</summary>
/// <param name="Criticality">Share of futures in which it drives the finish: traced back through what each job waited for.</param>
public sealed record JobBar(Guid Job, Guid? SystemId, string Title, DayRange Start, DayRange End, double Criticality);

public readonly record struct DayRange(DateOnly P10, DateOnly P50, DateOnly P90);

/// <param name="Limited">False when the purse names no money on hand: amounts are then only spending, counted below 0.</param>
/// <param name="OddsOfDry">Share of futures in which a due payment has to wait.</param>
/// <param name="Dry">First day of it: P10, P50, P90 of those futures; null when fewer than <see cref="Spread.FewestFutures"/> run dry.</param>
public sealed record CashCurve(string Currency, bool Limited, ImmutableArray<CashMonth> Months, double OddsOfDry, DateSpread? Dry);

/// <param name="End">Last day of the month.</param>
/// <param name="P10">Balance in the purse's currency: one future in ten has less.</param>
public readonly record struct CashMonth(DateOnly End, double P10, double P50, double P90);

public enum DriverKind { Hours, LeadTime, Discovery, OwnPace, OwnTime }

/// <summary>A cause of spread in the finish.</summary>
/// <param name="Share">First-order share of the finish's variance, 0 to 1: correlation ratio.</param>
public sealed record Driver(DriverKind Kind, Guid? Job, string Words, double Share);

/// <summary>Hidden work as it stands, and what it is worth to look first.</summary>
/// <param name="Odds">Given what was found elsewhere under the same cause.</param>
/// <param name="LookHours">Mean own hours of the job that looks.</param>
/// <param name="DaysIfFound">Mean finish later when it is so than when it is not; null when all futures agree on it.</param>
/// <param name="Sd">Of the finish, days; and mean of it once the finding is known.</param>
/// <param name="Tail">P90 − P50 of the finish, days; and mean of it once the finding is known.</param>
public sealed record DiscoveryForecast(
    Guid Discovery, Guid Job, string Words, double Odds, double LookHours, double? DaysIfFound, BeforeAfter Sd, BeforeAfter Tail);

public readonly record struct BeforeAfter(double Now, double Known);
