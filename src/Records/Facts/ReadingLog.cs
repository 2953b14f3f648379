using Microsoft.EntityFrameworkCore;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.Records;

sealed class ReadingLog(Func<RecordsDb> open) : IReadingLog
{
    public Task<int> Append(IReadOnlyList<ReadingEntry> readings, CancellationToken cancel = default) =>
        Append(readings, r => r.Id, "reading", Check.Of, NoSample, cancel);

    public Task<int> Withdraw(IReadOnlyList<Withdrawal> withdrawals, CancellationToken cancel = default) =>
        Append(withdrawals, w => w.Id, "withdrawal", Check.Of, NoReading, cancel);

    public async Task<ReadingHistory> History(Guid sample, CancellationToken cancel = default)
    {
        await using var db = open();
        await using var oneMoment = await db.ReadOneMoment(cancel);
        var readings = db.Set<ReadingEntry>().Where(r => r.SampleId == sample);
        var withdrawals = db.Set<Withdrawal>().Where(w => readings.Any(r => r.Id == w.ReadingId));
        return new(await InOrder(readings).ToListAsync(cancel), await InOrder(withdrawals).ToListAsync(cancel));
    }

    static IQueryable<T> InOrder<T>(IQueryable<T> facts) where T : class =>
        facts.AsNoTracking().OrderBy(f => EF.Property<long>(f, RecordsDb.Arrival));

    Task<int> Append<T>(IReadOnlyList<T> facts, Func<T, Guid> id, string what, Func<T, Refusal?> check,
        Func<RecordsDb, IReadOnlyList<T>, CancellationToken, Task<Refusal?>> orphan, CancellationToken cancel) where T : class
    {
        Facts.Refuse(facts, check);
        return Facts.Append(open, facts, id, what, orphan, cancel);
    }

    static async Task<Refusal?> NoSample(RecordsDb db, IReadOnlyList<ReadingEntry> readings, CancellationToken cancel)
    {
        var wanted = readings.Select(r => r.SampleId).Distinct().ToList();
        var there = await db.Set<PartSample>().Where(s => wanted.Contains(s.Id)).Select(s => s.Id).ToListAsync(cancel);
        return wanted.Except(there).Select(s => Refusal.Of("sample", $"{s}", "the sample must be saved before its readings")).FirstOrDefault();
    }

    static async Task<Refusal?> NoReading(RecordsDb db, IReadOnlyList<Withdrawal> withdrawals, CancellationToken cancel)
    {
        var wanted = withdrawals.Select(w => w.ReadingId).Distinct().ToList();
        var there = await db.Set<ReadingEntry>().Where(r => wanted.Contains(r.Id)).Select(r => r.Id).ToListAsync(cancel);
        return wanted.Except(there).Select(r => Refusal.Of("reading", $"{r}", "only a reading on record can be taken back")).FirstOrDefault();
    }
}
