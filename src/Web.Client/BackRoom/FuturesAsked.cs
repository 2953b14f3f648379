using System.Collections.Immutable;
using WitnessMark.FrontOffice.OrderWork;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.PlanningOffice.Plans;

namespace WitnessMark.Web.Client.BackRoom;

/// <summary>A plan as it goes to the back room: all that its futures are made from.</summary>
/// <param name="Finished">Jobs from which the person's own pace is learnt.</param>
/// <param name="Priority">Which job is taken first when several could be.</param>
/// <param name="Orders">Days on which supplies are ordered, where they are fixed.</param>
public sealed record PlanAsked(
    ImmutableArray<Job> Jobs, ImmutableArray<Milestone> Milestones, Means Means, DateOnly Today, WorkCalendar Calendar,
    ImmutableArray<FinishedJob> Finished, ImmutableArray<Guid> Priority, ImmutableArray<OrderDay> Orders)
{
    /// <summary>As the planning office reads it.</summary>
    public PlanInput Input() => new(Jobs, Milestones, Means, Today)
    {
        Calendar = Calendar,
        Pace = new LearntPace(new(Finished)),
        Priority = Priority,
        Orders = Orders,
    };
}

/// <param name="Seed">The same seed gives the same futures on every machine.</param>
public readonly record struct Chances(ulong Seed, int Futures)
{
    /// <summary>Enough to tell P90 to about two weeks in two years, and soon done in a browser.</summary>
    public static Chances Usual { get; } = new(1, 2000);
}

public sealed record FuturesAsked(PlanAsked Plan, Chances Chances);

/// <summary>Two plans under the same chances.</summary>
/// <param name="Words">What is changed.</param>
public sealed record WhatIfAsked(string Words, PlanAsked Plan, PlanAsked Changed, Chances Chances);

/// <param name="Standing">Jobs in the order that stands; empty to begin afresh.</param>
/// <param name="Seconds">How long to search.</param>
public sealed record OrderAsked(PlanAsked Plan, ImmutableArray<Guid> Standing, double Seconds)
{
    /// <summary>As the planning office reads it: expected hours, with the pace learnt so far.</summary>
    public OrderWorkRequest Request()
    {
        var facts = new OrderFacts(Plan.Jobs, Plan.Milestones, Plan.Today, Plan.Calendar.Expected) { Previous = Standing, Bias = new BiasModel(Plan.Finished).Medians() };
        return new(facts, Plan.Means, Seconds, Seed: 1);
    }
}
