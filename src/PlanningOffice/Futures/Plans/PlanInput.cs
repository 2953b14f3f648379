using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>All that a forecast of the plan is made from.</summary>
/// <param name="Today">Day 0 of every future.</param>
public sealed record PlanInput(ImmutableArray<Job> Jobs, ImmutableArray<Milestone> Milestones, Means Means, DateOnly Today)
{
    /// <summary>Which job is taken first when several could be; those not named follow as listed.</summary>
    public ImmutableArray<Guid> Priority { get; init; } = [];

    public WorkCalendar Calendar { get; init; } = WorkCalendar.Usual;

    public IOwnPace Pace { get; init; } = LearntPace.Prior;

    /// <summary>
    /// Days on which supplies are ordered. Those not named are ordered in good time: their longest lead and
    /// <see cref="Margin"/> days before the job would begin if all went as expected, at the earliest today.
    /// </summary>
    public ImmutableArray<OrderDay> Orders { get; init; } = [];

    /// <summary>Days of grace at ordering (common practice).</summary>
    public const int Margin = 14;
}

/// <param name="Lead">Place in the job's list of lead times, from 0.</param>
public readonly record struct OrderDay(Guid Job, int Lead, DateOnly On);
