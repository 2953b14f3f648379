using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice.Next;

/// <summary>A plan as it stands, for choosing what comes next.</summary>
/// <param name="GoesBack">Day on which something borrowed for a part goes back, by the part.</param>
/// <param name="Cautions">Of a job.</param>
public sealed record NextFacts(
    ImmutableArray<Job> Jobs, ImmutableArray<Milestone> Milestones, IReadOnlyDictionary<Guid, DateOnly> GoesBack,
    Func<Job, ImmutableArray<string>> Cautions)
{
    /// <summary>Own hours as a multiple of what was guessed; 1 while no record says otherwise.</summary>
    public Func<Job, double> Bias { get; init; } = _ => 1;

    /// <summary>Hours of own work on a mean day, above 0: it weighs hours against days of waiting on the longest path.</summary>
    public double HoursADay { get; init; } = 1;
}
