using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Records;

sealed class KeptFacts<T>(Func<RecordsDb> open, FactShelf shelf) : IFacts<T> where T : class, IFact
{
    static readonly string Kind = typeof(T).Name;

    public Task<int> Append(IReadOnlyList<T> facts, CancellationToken cancel = default)
    {
        Facts.Refuse(facts, f => f.Wrong());
        return FactRows.Append(open, [.. facts.Select(f => new KeptFact(f.Id, f.VehicleId, Kind, JsonText.Of(f), (f as IPartFact)?.PartId))], cancel);
    }

    public async Task<ImmutableArray<T>> Of(Guid vehicle, CancellationToken cancel = default)
    {
        await using var db = open();
        await using var oneMoment = await db.ReadOneMoment(cancel);
        var facts = await shelf.Of<T>(db, vehicle, cancel);
        return typeof(T) == typeof(TakenBack) ? facts : Rows.Standing(facts, await shelf.Of<TakenBack>(db, vehicle, cancel));
    }

    public async Task<Stretch<T>> Newest(Guid vehicle, Newest asked, CancellationToken cancel = default)
    {
        if (asked.Take is < 1 or > Stores.Keeping.Newest.Most)
            throw new RefusedException(Refusal.Of("take", $"{asked.Take}", $"ask for 1 to {Stores.Keeping.Newest.Most} at once"));
        await using var db = open();
        await using var oneMoment = await db.ReadOneMoment(cancel);
        return await FactRows.Newest<T>(db, shelf, vehicle, asked, cancel);
    }
}

/// <summary>The one table of the facts beside the readings.</summary>
static class FactRows
{
    public static Task<int> Append(Func<RecordsDb> open, IReadOnlyList<KeptFact> facts, CancellationToken cancel) =>
        Facts.Append(open, facts, f => f.Id, "entry", NoVehicle, cancel);

    /// <summary>Those that stand, newest arrival first. One that was taken back is left out by its id, in the file itself.</summary>
    public static async Task<Stretch<T>> Newest<T>(RecordsDb db, FactShelf shelf, Guid vehicle, Newest asked, CancellationToken cancel)
    {
        var kind = typeof(T).Name;
        var standing = db.Set<KeptFact>().AsNoTracking().Where(f => f.VehicleId == vehicle && f.Kind == kind);
        if (kind != nameof(TakenBack) && await shelf.Of<TakenBack>(db, vehicle, cancel) is { IsEmpty: false } takenBack)
        {
            var gone = takenBack.Select(t => t.FactId).ToList();
            standing = standing.Where(f => !gone.Contains(f.Id));
        }
        if (asked.PartId is { } part) standing = standing.Where(f => f.PartId == part);
        var stretch = asked.Before is { } before ? standing.Where(f => EF.Property<long>(f, RecordsDb.Arrival) < before) : standing;
        var rows = await stretch.OrderByDescending(f => EF.Property<long>(f, RecordsDb.Arrival)).Take(asked.Take + 1)
            .Select(f => new { f.Text, At = EF.Property<long>(f, RecordsDb.Arrival) }).ToListAsync(cancel);
        var shown = rows.Take(asked.Take).ToList();
        return new([.. shown.Select(r => JsonText.Read<T>(r.Text))], rows.Count > asked.Take ? shown[^1].At : null, await standing.CountAsync(cancel));
    }

    static async Task<Refusal?> NoVehicle(RecordsDb db, IReadOnlyList<KeptFact> facts, CancellationToken cancel)
    {
        var wanted = facts.Select(f => f.VehicleId).Distinct().ToList();
        var there = await db.Set<Vehicle>().Where(v => wanted.Contains(v.Id)).Select(v => v.Id).ToListAsync(cancel);
        return wanted.Except(there).Select(v => Refusal.Of("vehicle", $"{v}", "it must be saved before what is noted of it")).FirstOrDefault();
    }
}
