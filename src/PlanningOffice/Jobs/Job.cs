using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.PlanningOffice;

public enum JobState { Planned, InHand, Done }

/// <summary>A piece of work on a part, with its card.</summary>
public sealed record Job(Guid Id, Guid PartId, string Title, JobState State, RouteCard Card)
{
    public Refusal? Wrong =>
        string.IsNullOrWhiteSpace(Title) || Title.Length > Check.LongestText
            ? Refusal.Of("job title", Title, $"give it a few words, at most {Check.LongestText} characters")
        : Card.Steps.IsDefaultOrEmpty || Card.Stock.IsDefault
            ? Refusal.Of("job card", null, "a job needs at least one step")
        : Card.Steps.Select(s => s.Hours.Wrong ?? s.Cost.Spread.Wrong).FirstOrDefault(r => r is not null);
}

/// <summary>
/// Keeps jobs and the person's shop, under the same rule as <see cref="IVehicleStore"/>: a saving names the version it was
/// built on and is told of a clash.
/// </summary>
public interface IJobStore
{
    Task<ImmutableArray<Versioned<Job>>> Jobs(Guid vehicle, CancellationToken cancel = default);

    Task<Saved<Job>> Save(Job row, int basedOn, CancellationToken cancel = default);

    /// <summary><see cref="PlanningOffice.Shop.Usual"/> at version 0 until one has been saved.</summary>
    Task<Versioned<Shop>> Shop(CancellationToken cancel = default);

    Task<Saved<Shop>> Save(Shop row, int basedOn, CancellationToken cancel = default);
}
