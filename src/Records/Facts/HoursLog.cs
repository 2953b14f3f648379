using Microsoft.EntityFrameworkCore;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;

namespace WitnessMark.Records;

/// <summary>Hours are facts of the vehicle that the job belongs to.</summary>
sealed class HoursLog(Func<RecordsDb> open, FactShelf shelf, TimeProvider clock) : IHoursLog
{
    public Task<int> Append(IReadOnlyList<Started> rows, CancellationToken cancel = default) =>
        Append(rows, r => r.Id, r => r.JobId, HoursCheck.Of, cancel);

    public Task<int> Append(IReadOnlyList<HoursEntry> rows, CancellationToken cancel = default) =>
        Append(rows, r => r.Id, r => r.JobId, HoursCheck.Of, cancel);

    public async Task<int> Withdraw(IReadOnlyList<HoursWithdrawal> rows, CancellationToken cancel = default)
    {
        Refuse(rows, HoursCheck.Of);
        await using var db = open();
        var entries = rows.Select(r => r.EntryId).Distinct().ToList();
        var vehicles = await db.Set<KeptFact>().Where(f => entries.Contains(f.Id) && (f.Kind == nameof(Started) || f.Kind == nameof(HoursEntry)))
            .Select(f => new { f.Id, f.VehicleId }).ToDictionaryAsync(f => f.Id, f => f.VehicleId, cancel);
        if (entries.Where(e => !vehicles.ContainsKey(e)).Select(e => (Guid?)e).FirstOrDefault() is { } lost)
            throw new RefusedException(Refusal.Of("entry taken back", $"{lost}", "it must be on record before it is taken back"));
        return await FactRows.Append(open, [.. rows.Select(r => new KeptFact(r.Id, vehicles[r.EntryId], nameof(HoursWithdrawal), JsonText.Of(r)))], cancel);
    }

    public async Task<HoursHistory> History(Guid vehicle, CancellationToken cancel = default)
    {
        await using var db = open();
        await using var oneMoment = await db.ReadOneMoment(cancel);
        return new(
            await shelf.Of<Started>(db, vehicle, cancel), await shelf.Of<HoursEntry>(db, vehicle, cancel),
            await shelf.Of<HoursWithdrawal>(db, vehicle, cancel));
    }

    async Task<int> Append<T>(
        IReadOnlyList<T> rows, Func<T, Guid> id, Func<T, Guid> job, Func<T, DateTimeOffset, Refusal?> wrong, CancellationToken cancel) where T : class
    {
        Refuse(rows, wrong);
        await using var db = open();
        var jobs = rows.Select(job).Distinct().ToList();
        var vehicles = await db.Set<Job>().Where(j => jobs.Contains(j.Id)).Select(j => new { j.Id, j.VehicleId }).ToDictionaryAsync(j => j.Id, j => j.VehicleId, cancel);
        if (rows.FirstOrDefault(r => !vehicles.ContainsKey(job(r))) is { } orphan)
            throw new RefusedException(Refusal.Of("job", $"{job(orphan)}", "the job must be saved before its hours"));
        return await FactRows.Append(open, [.. rows.Select(r => new KeptFact(id(r), vehicles[job(r)], typeof(T).Name, JsonText.Of(r)))], cancel);
    }

    void Refuse<T>(IReadOnlyList<T> rows, Func<T, DateTimeOffset, Refusal?> wrong)
    {
        var now = clock.GetUtcNow();
        Facts.Refuse(rows, r => wrong(r, now));
    }
}
