using System.Collections.Immutable;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.Web.Client.BackRoom;

/// <summary>A plan as it goes to the back room: all that its futures are made from.</summary>
/// <param name="Priority">Which job is taken first when several could be.</param>
/// <param name="Orders">Days on which supplies are ordered, where they are fixed.</param>
public sealed record PlanAsked(
    ImmutableArray<Job> Jobs, ImmutableArray<Milestone> Milestones, Means Means, DateOnly Today, WeeklyTime Time,
    ImmutableArray<Guid> Priority, ImmutableArray<OrderDay> Orders)
{
    /// <param name="told">Told the share done, 0 to 1.</param>
    /// <exception cref="WitnessMark.Maths.RefusedException">The plan is impossible.</exception>
    public Simulation Run(Chances chances, IProgress<double> told)
    {
        var input = new PlanInput(Jobs, Milestones, Means, Today) { Time = Time, Priority = Priority, Orders = Orders };
        return Simulation.Of(input, chances.Seed, chances.Futures).Run(told);
    }
}

/// <param name="Seed">The same seed gives the same futures on every machine.</param>
public readonly record struct Chances(ulong Seed, int Futures)
{
    /// <summary>Enough to tell P90 to about a week in two years, and soon done in a browser.</summary>
    public static Chances Usual { get; } = new(1, 2000);
}

public sealed record FuturesAsked(PlanAsked Plan, Chances Chances);

/// <summary>Two plans under the same chances.</summary>
/// <param name="Words">What is changed.</param>
public sealed record WhatIfAsked(string Words, PlanAsked Plan, PlanAsked Changed, Chances Chances);
