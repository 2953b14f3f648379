using System.Collections.Immutable;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;

namespace WitnessMark.Tests.FrontOffice.PlanJobs;

/// <summary>A job store in memory, under the port's rule of versions.</summary>
sealed class MemoryJobs : IJobStore
{
    readonly Dictionary<Guid, Versioned<Job>> _jobs = [];
    readonly Dictionary<Guid, Versioned<Milestone>> _milestones = [];
    readonly Dictionary<Guid, Versioned<Means>> _means = [];

    public Task<ImmutableArray<Versioned<Job>>> Jobs(Guid vehicle, CancellationToken cancel = default) =>
        Task.FromResult(_jobs.Values.ToImmutableArray());

    public Task<Saved<Job>> Save(Job row, int basedOn, CancellationToken cancel = default) => Save(_jobs, row.Id, row, basedOn);

    public async Task<int> Add(IReadOnlyList<Job> rows, CancellationToken cancel = default)
    {
        var added = 0;
        foreach (var row in rows)
            if (!(await Save(row, 0, cancel)).Clash) added++;
        return added;
    }

    public Task<ImmutableArray<Versioned<Milestone>>> Milestones(Guid vehicle, CancellationToken cancel = default) =>
        Task.FromResult(_milestones.Values.ToImmutableArray());

    public Task<Saved<Milestone>> Save(Milestone row, int basedOn, CancellationToken cancel = default) => Save(_milestones, row.Id, row, basedOn);

    public Task<Versioned<Means>> Means(Guid vehicle, CancellationToken cancel = default) =>
        Task.FromResult(_means.GetValueOrDefault(vehicle, new(PlanningOffice.Means.Usual(vehicle), 0)));

    public Task<Saved<Means>> Save(Means row, int basedOn, CancellationToken cancel = default) => Save(_means, row.Id, row, basedOn);

    public Task<Versioned<StandingOrder>> Order(Guid vehicle, CancellationToken cancel = default) =>
        Task.FromResult(new Versioned<StandingOrder>(new(vehicle, [], default), 0));

    public Task<Saved<StandingOrder>> Save(StandingOrder row, int basedOn, CancellationToken cancel = default) => Task.FromResult(new Saved<StandingOrder>(new(row, 1), false));

    public Task<Versioned<WorkCalendar>> Calendar(CancellationToken cancel = default) => Task.FromResult(new Versioned<WorkCalendar>(WorkCalendar.Usual, 0));

    public Task<Saved<WorkCalendar>> Save(WorkCalendar row, int basedOn, CancellationToken cancel = default) => Task.FromResult(new Saved<WorkCalendar>(new(row, 1), false));

    public Task<Versioned<Shop>> Shop(CancellationToken cancel = default) => Task.FromResult(new Versioned<Shop>(PlanningOffice.Shop.Usual, 0));

    public Task<Saved<Shop>> Save(Shop row, int basedOn, CancellationToken cancel = default) => Task.FromResult(new Saved<Shop>(new(row, 1), false));

    static Task<Saved<T>> Save<T>(Dictionary<Guid, Versioned<T>> rows, Guid id, T row, int basedOn)
    {
        var standing = rows.GetValueOrDefault(id);
        if (standing.Version != basedOn) return Task.FromResult(new Saved<T>(standing, true));
        return Task.FromResult(new Saved<T>(rows[id] = new(row, basedOn + 1), false));
    }
}
