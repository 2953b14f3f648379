using Microsoft.EntityFrameworkCore;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;

namespace WitnessMark.Records;

/// <summary>Hours are facts of the vehicle that the job belongs to.</summary>
sealed class HoursLog(Func<RecordsDb> open, FactShelf shelf, TimeProvider clock) : IHoursLog
{
    public Task Append(Started row, CancellationToken cancel = default) => Append(row, row.Id, row.JobId, HoursCheck.Of(row, clock.GetUtcNow()), cancel);

    public Task Append(HoursEntry row, CancellationToken cancel = default) => Append(row, row.Id, row.JobId, HoursCheck.Of(row, clock.GetUtcNow()), cancel);

    public async Task Withdraw(HoursWithdrawal row, CancellationToken cancel = default)
    {
        if (HoursCheck.Of(row, clock.GetUtcNow()) is { } wrong) throw new RefusedException(wrong);
        await using var db = open();
        var entry = await db.Set<KeptFact>().AsNoTracking()
            .SingleOrDefaultAsync(f => f.Id == row.EntryId && (f.Kind == nameof(Started) || f.Kind == nameof(HoursEntry)), cancel)
            ?? throw new RefusedException(Refusal.Of("entry taken back", $"{row.EntryId}", "it must be on record before it is taken back"));
        await FactRows.Append(open, [new KeptFact(row.Id, entry.VehicleId, nameof(HoursWithdrawal), JsonText.Of(row))], cancel);
    }

    public async Task<HoursHistory> History(Guid vehicle, CancellationToken cancel = default)
    {
        await using var db = open();
        await using var oneMoment = await db.ReadOneMoment(cancel);
        return new(
            await shelf.Of<Started>(db, vehicle, cancel), await shelf.Of<HoursEntry>(db, vehicle, cancel),
            await shelf.Of<HoursWithdrawal>(db, vehicle, cancel));
    }

    async Task Append<T>(T row, Guid id, Guid jobId, Refusal? wrong, CancellationToken cancel)
    {
        if (wrong is not null) throw new RefusedException(wrong);
        await using var db = open();
        var vehicle = await db.Set<Job>().Where(j => j.Id == jobId).Select(j => (Guid?)j.VehicleId).SingleOrDefaultAsync(cancel)
            ?? throw new RefusedException(Refusal.Of("job", $"{jobId}", "the job must be saved before its hours"));
        await FactRows.Append(open, [new KeptFact(id, vehicle, typeof(T).Name, JsonText.Of(row))], cancel);
    }
}
