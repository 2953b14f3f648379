using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.PlanningOffice;

public enum JobState { Planned, InHand, Done }

/// <summary>A piece of work on a part, a system or the whole vehicle.</summary>
/// <param name="SystemId">Of its part, when it has one; null for the whole vehicle.</param>
/// <param name="Hours">Own hours in all as the person guesses them, before his bias; what has been logged is taken off by the forecast.</param>
/// <param name="Cost">Stock and consumables, paid when the job begins; lead times carry prices of their own.</param>
/// <param name="Leads">Supplies it waits for, and cures or sent-out work behind it.</param>
/// <param name="After">Jobs that must be over first.</param>
/// <param name="MayFind">Hidden work that this job may bring to light.</param>
/// <param name="Card">Its card, when the drawing office or the person wrote one.</param>
public sealed record Job(
    Guid Id, Guid VehicleId, Guid? SystemId, Guid? PartId, string Title, WorkKind Kind, JobState State,
    ThreePoint Hours, Cost Cost, Needs Needs,
    ImmutableArray<Lead> Leads, ImmutableArray<Guid> After, ImmutableArray<Discovery> MayFind, RouteCard? Card)
{
    /// <summary>A job with nothing special about it.</summary>
    public static Job Plain(Guid id, Guid vehicle, Guid? system, Guid? part, string title, WorkKind kind, ThreePoint hours, Cost cost) =>
        new(id, vehicle, system, part, title, kind, JobState.Planned, hours, cost, Needs.None, [], [], [], null);

    /// <summary>The job that a card describes; what the card sends out waits behind it.</summary>
    public static Job Of(Guid id, Guid vehicle, Guid? system, Guid part, RouteCard card) =>
        Plain(id, vehicle, system, part, card.Title, WorkKind.Make, card.Hours, card.Cost) with
        {
            Needs = Needs.None with { Place = WorkPlace.Bench },
            Leads = [.. card.SentOut.Select(s => new Lead(s.Title, LeadSide.Behind, s.SentOut!.LeadDays, Cost.None(card.Cost.Currency), 0, null, false))],
            Card = card,
        };

    public Refusal? Wrong =>
        (string.IsNullOrWhiteSpace(Title) || Title.Length > Check.LongestText
            ? Refusal.Of("job title", Title, $"give it a few words, at most {Check.LongestText} characters") : null)
        ?? (Enum.IsDefined(Kind) && Enum.IsDefined(State) && Enum.IsDefined(Needs.Place) ? null : Refusal.Of($"kind, state or place of \"{Title}\"", null, "give one of those listed"))
        ?? (Leads.IsDefault || After.IsDefault || MayFind.IsDefault ? Refusal.Of($"lists of \"{Title}\"", null, "lead times, jobs before and discoveries may be empty, but must be there") : null)
        ?? Hours.Wrong?.In($"hours of \"{Title}\"") ?? Cost.Spread.Wrong?.In($"cost of \"{Title}\"")
        ?? Leads.Select(l => l.Wrong).Concat(MayFind.Select(d => d.Wrong)).FirstOrDefault(r => r is not null)
        ?? (After.Contains(Id) ? Refusal.Of($"jobs before \"{Title}\"", Title, "a job cannot wait for itself") : null)
        ?? (Card is null ? null
            : Card.Steps.IsDefaultOrEmpty || Card.Stock.IsDefault ? Refusal.Of("job card", null, "a card needs at least one step")
            : Card.Steps.Select(s => s.Hours.Wrong ?? s.Cost.Spread.Wrong).FirstOrDefault(r => r is not null));
}

/// <summary>
/// Keeps what the planning office decides, under the same rule as <see cref="IVehicleStore"/>: a saving names the version it
/// was built on and is told of a clash.
/// </summary>
public interface IJobStore
{
    Task<ImmutableArray<Versioned<Job>>> Jobs(Guid vehicle, CancellationToken cancel = default);

    Task<Saved<Job>> Save(Job row, int basedOn, CancellationToken cancel = default);

    /// <summary>Adds the jobs that are not kept yet, all or nothing; those kept stand as they are.</summary>
    /// <returns>How many were new.</returns>
    Task<int> Add(IReadOnlyList<Job> rows, CancellationToken cancel = default);

    Task<ImmutableArray<Versioned<Milestone>>> Milestones(Guid vehicle, CancellationToken cancel = default);

    Task<Saved<Milestone>> Save(Milestone row, int basedOn, CancellationToken cancel = default);

    /// <summary><see cref="Means.Usual"/> at version 0 until they have been saved.</summary>
    Task<Versioned<Means>> Means(Guid vehicle, CancellationToken cancel = default);

    Task<Saved<Means>> Save(Means row, int basedOn, CancellationToken cancel = default);

    /// <summary>An empty order at version 0 until one has been decided.</summary>
    Task<Versioned<StandingOrder>> Order(Guid vehicle, CancellationToken cancel = default);

    Task<Saved<StandingOrder>> Save(StandingOrder row, int basedOn, CancellationToken cancel = default);

    /// <summary><see cref="WorkCalendar.Usual"/> at version 0 until one has been saved; there is one person.</summary>
    Task<Versioned<WorkCalendar>> Calendar(CancellationToken cancel = default);

    Task<Saved<WorkCalendar>> Save(WorkCalendar row, int basedOn, CancellationToken cancel = default);

    /// <summary><see cref="PlanningOffice.Shop.Usual"/> at version 0 until one has been saved.</summary>
    Task<Versioned<Shop>> Shop(CancellationToken cancel = default);

    Task<Saved<Shop>> Save(Shop row, int basedOn, CancellationToken cancel = default);
}
