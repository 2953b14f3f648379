using Microsoft.EntityFrameworkCore;
using WitnessMark.Maths;

namespace WitnessMark.Records;

/// <summary>Appends facts, each once.</summary>
static class Facts
{
    /// <summary>
    /// Exactly once: the transaction holds SQLite's write lock from its beginning (BEGIN IMMEDIATE), so no other writer
    /// comes between looking for an id and inserting it. All or nothing.
    /// </summary>
    /// <param name="what">What one of them is called.</param>
    /// <param name="orphan">Why what they belong to does not stand; null when it does.</param>
    /// <returns>How many were new.</returns>
    public static async Task<int> Append<T>(
        Func<RecordsDb> open, IReadOnlyList<T> facts, Func<T, Guid> id, string what,
        Func<RecordsDb, IReadOnlyList<T>, CancellationToken, Task<Refusal?>> orphan, CancellationToken cancel) where T : class
    {
        await using var db = open();
        await using var once = await db.Database.BeginTransactionAsync(cancel);
        if (await orphan(db, facts, cancel) is { } lost) throw new RefusedException(lost);
        var ids = facts.Select(id).ToList();
        var known = await db.Set<T>().AsNoTracking().Where(f => ids.Contains(EF.Property<Guid>(f, "Id"))).ToDictionaryAsync(id, cancel);
        var added = 0;
        foreach (var f in facts)
        {
            if (known.TryAdd(id(f), f))
            {
                db.Add(f);
                added++;
            }
            else if (!known[id(f)].Equals(f))
                throw new RefusedException(Refusal.Of($"{what} id", $"{id(f)}", $"another {what} has it already; what is on record is never altered, take it back and write a new one"));
        }
        await db.SaveChangesAsync(cancel);
        await once.CommitAsync(cancel);
        return added;
    }

    /// <exception cref="RefusedException">The first that is wrong.</exception>
    public static void Refuse<T>(IEnumerable<T> facts, Func<T, Refusal?> wrong)
    {
        foreach (var f in facts)
            if (wrong(f) is { } refusal) throw new RefusedException(refusal);
    }
}
