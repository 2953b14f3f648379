using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Records;

sealed class KeptFacts<T>(Func<RecordsDb> open) : IFacts<T> where T : class, IFact
{
    static readonly string Kind = typeof(T).Name;

    public Task<int> Append(IReadOnlyList<T> facts, CancellationToken cancel = default) =>
        FactRows.Append(open, [.. facts.Select(f => (new KeptFact(f.Id, f.VehicleId, Kind, JsonText.Of(f)), f.Wrong()))], cancel);

    public async Task<ImmutableArray<T>> Of(Guid vehicle, CancellationToken cancel = default)
    {
        await using var db = open();
        await using var oneMoment = await db.ReadOneMoment(cancel);
        var facts = await FactRows.Of<T>(db, vehicle, cancel);
        return typeof(T) == typeof(TakenBack) ? facts : Rows.Standing(facts, await FactRows.Of<TakenBack>(db, vehicle, cancel));
    }
}

/// <summary>The one table of the facts beside the readings.</summary>
static class FactRows
{
    /// <summary>
    /// Exactly once: the transaction holds the write lock from its beginning (BEGIN IMMEDIATE), so no other writer comes between
    /// looking for an id and inserting it.
    /// </summary>
    public static async Task<int> Append(Func<RecordsDb> open, IReadOnlyList<(KeptFact Fact, Maths.Refusal? Wrong)> facts, CancellationToken cancel)
    {
        foreach (var (_, wrong) in facts)
            if (wrong is not null) throw new Maths.RefusedException(wrong);
        await using var db = open();
        await using var once = await db.Database.BeginTransactionAsync(cancel);
        var vehicles = facts.Select(f => f.Fact.VehicleId).Distinct().ToList();
        var there = await db.Set<Stores.Vehicle>().Where(v => vehicles.Contains(v.Id)).Select(v => v.Id).ToListAsync(cancel);
        if (vehicles.Except(there).Any()) throw new Maths.RefusedException(Maths.Refusal.Of("vehicle", $"{vehicles.Except(there).First()}", "it must be saved before what is noted of it"));
        var ids = facts.Select(f => f.Fact.Id).ToList();
        var known = await db.Set<KeptFact>().AsNoTracking().Where(f => ids.Contains(f.Id)).ToDictionaryAsync(f => f.Id, cancel);
        var added = 0;
        foreach (var (fact, _) in facts)
        {
            if (known.TryAdd(fact.Id, fact))
            {
                db.Add(fact);
                added++;
            }
            else if (known[fact.Id] != fact)
                throw new Maths.RefusedException(Maths.Refusal.Of("id of this entry", $"{fact.Id}", "another entry has it already; what is on record is never altered, take it back and write a new one"));
        }
        await db.SaveChangesAsync(cancel);
        await once.CommitAsync(cancel);
        return added;
    }

    /// <summary>All that were ever written, in the order they arrived.</summary>
    public static async Task<ImmutableArray<T>> Of<T>(RecordsDb db, Guid vehicle, CancellationToken cancel)
    {
        var kind = typeof(T).Name;
        var texts = await db.Set<KeptFact>().AsNoTracking().Where(f => f.VehicleId == vehicle && f.Kind == kind)
            .OrderBy(f => EF.Property<long>(f, RecordsDb.Arrival)).Select(f => f.Text).ToListAsync(cancel);
        return [.. texts.Select(JsonText.Read<T>)];
    }
}
