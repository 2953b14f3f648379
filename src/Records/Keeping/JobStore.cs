using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;

namespace WitnessMark.Records;

sealed class JobStore(Func<RecordsDb> open) : IJobStore
{
    public async Task<ImmutableArray<Versioned<Job>>> Jobs(Guid vehicle, CancellationToken cancel = default)
    {
        await using var db = open();
        return await db.List(db.Set<Job>().Where(j => j.VehicleId == vehicle).OrderBy(j => j.Title), cancel);
    }

    public Task<Saved<Job>> Save(Job row, int basedOn, CancellationToken cancel = default) =>
        Decisions.Save(open, row, row.Id, basedOn, row.Wrong, cancel);

    public async Task<int> Add(IReadOnlyList<Job> rows, CancellationToken cancel = default)
    {
        await using var db = open();
        await using var all = await db.Database.BeginTransactionAsync(cancel);
        var added = await db.AddMissing(rows, j => j.Id, j => j.Wrong, cancel);
        try
        {
            await db.SaveChangesAsync(cancel);
        }
        catch (DbUpdateException e) when (e.Orphans())
        {
            throw new RefusedException(Refusal.Of("vehicle, system or part of a job", null, "what it belongs to must be saved first"));
        }
        await all.CommitAsync(cancel);
        return added;
    }

    public async Task<ImmutableArray<Versioned<Milestone>>> Milestones(Guid vehicle, CancellationToken cancel = default)
    {
        await using var db = open();
        return await db.List(db.Set<Milestone>().Where(m => m.VehicleId == vehicle).OrderBy(m => m.Name), cancel);
    }

    public Task<Saved<Milestone>> Save(Milestone row, int basedOn, CancellationToken cancel = default) =>
        Decisions.Save(open, row, row.Id, basedOn, row.Wrong, cancel);

    public async Task<Versioned<Means>> Means(Guid vehicle, CancellationToken cancel = default)
    {
        await using var db = open();
        return await db.Standing<Means>(vehicle, cancel) ?? new(PlanningOffice.Means.Usual(vehicle), 0);
    }

    public Task<Saved<Means>> Save(Means row, int basedOn, CancellationToken cancel = default) =>
        Decisions.Save(open, row, row.Id, basedOn, row.Wrong, cancel);

    public async Task<Versioned<StandingOrder>> Order(Guid vehicle, CancellationToken cancel = default)
    {
        await using var db = open();
        return await db.Standing<StandingOrder>(vehicle, cancel) ?? new(new StandingOrder(vehicle, [], default), 0);
    }

    public Task<Saved<StandingOrder>> Save(StandingOrder row, int basedOn, CancellationToken cancel = default) =>
        Decisions.Save(open, row, row.Id, basedOn, row.Wrong, cancel);

    public async Task<Versioned<WorkCalendar>> Calendar(CancellationToken cancel = default)
    {
        await using var db = open();
        return (await db.Standing<KeptCalendar>(KeptCalendar.TheOne, cancel))?.As(k => k.Calendar) ?? new(WorkCalendar.Usual, 0);
    }

    public async Task<Saved<WorkCalendar>> Save(WorkCalendar row, int basedOn, CancellationToken cancel = default) =>
        (await Decisions.Save(open, new KeptCalendar(KeptCalendar.TheOne, row), KeptCalendar.TheOne, basedOn, row.Wrong, cancel)).As(k => k.Calendar);

    public async Task<Versioned<Shop>> Shop(CancellationToken cancel = default)
    {
        await using var db = open();
        return (await db.Standing<KeptShop>(KeptShop.TheOne, cancel))?.As(k => k.Shop) ?? new(PlanningOffice.Shop.Usual, 0);
    }

    public async Task<Saved<Shop>> Save(Shop row, int basedOn, CancellationToken cancel = default) =>
        (await Decisions.Save(open, new KeptShop(KeptShop.TheOne, row), KeptShop.TheOne, basedOn, row.Wrong, cancel)).As(k => k.Shop);
}
