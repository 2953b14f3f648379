using System.Collections.Immutable;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.Records;

/// <summary>Reads and saves rows under a version.</summary>
static class Decisions
{
    public static async Task<Versioned<T>?> Standing<T>(this RecordsDb db, Guid id, CancellationToken cancel) where T : class
    {
        var row = await db.Set<T>().SingleOrDefaultAsync(r => EF.Property<Guid>(r, "Id") == id, cancel);
        return row is null ? null : db.Versioned(row);
    }

    public static async Task<ImmutableArray<Versioned<T>>> List<T>(this RecordsDb db, IQueryable<T> rows, CancellationToken cancel) where T : class =>
        [.. await rows.AsNoTracking().Select(r => new Versioned<T>(r, EF.Property<int>(r, RecordsDb.Version))).ToListAsync(cancel)];

    /// <summary>
    /// One statement decides: INSERT for a new row, UPDATE ... WHERE Version = basedOn for an old one. Whoever comes second
    /// gets the row that stands.
    /// </summary>
    public static async Task<Saved<T>> Save<T>(Func<RecordsDb> open, T row, Guid id, int basedOn, Refusal? wrong, CancellationToken cancel) where T : class
    {
        if (wrong is not null) throw new RefusedException(wrong);
        if (basedOn < 0) throw new RefusedException(Refusal.Of("version", $"{basedOn}", "give the version it was built on, 0 for a new row"));
        await using var db = open();
        var entry = db.Entry(row);
        entry.Property<int>(RecordsDb.Version).CurrentValue = basedOn + 1;
        entry.State = basedOn == 0 ? EntityState.Added : EntityState.Modified;
        entry.Property<int>(RecordsDb.Version).OriginalValue = basedOn;
        try
        {
            await db.SaveChangesAsync(cancel);
            return new(new(row, basedOn + 1), Clash: false);
        }
        catch (DbUpdateConcurrencyException)
        {
            return await Clash(open, row, id, cancel);
        }
        catch (DbUpdateException e) when (e.InnerException is SqliteException { SqliteExtendedErrorCode: PrimaryKeyTaken })
        {
            return await Clash(open, row, id, cancel);
        }
        catch (DbUpdateException e) when (e.Orphans())
        {
            throw new RefusedException(Refusal.Of($"owner of this {typeof(T).Name}", null, "what it belongs to must be saved first"));
        }
        catch (DbUpdateException e) when (e.InnerException is SqliteException { SqliteExtendedErrorCode: NameTaken })
        {
            throw new RefusedException(Refusal.Of($"name of this {typeof(T).Name}", null, "another has it already; give it a name of its own"));
        }
    }

    /// <summary>Puts those that do not stand yet into the unit of work, at version 1.</summary>
    /// <returns>How many.</returns>
    public static async Task<int> AddMissing<T>(this RecordsDb db, IEnumerable<T> rows, Func<T, Guid> id, Func<T, Refusal?> check, CancellationToken cancel) where T : class
    {
        var standing = (await db.Set<T>().Select(r => EF.Property<Guid>(r, "Id")).ToListAsync(cancel)).ToHashSet();
        var missing = rows.Where(r => standing.Add(id(r))).ToList();
        foreach (var row in missing)
        {
            if (check(row) is { } wrong) throw new RefusedException(wrong);
            db.Add(row).Property<int>(RecordsDb.Version).CurrentValue = 1;
        }
        return missing.Count;
    }

    /// <summary>Whether it was refused because what a row belongs to does not stand.</summary>
    public static bool Orphans(this DbUpdateException e) => e.InnerException is SqliteException { SqliteExtendedErrorCode: NoSuchParent };

    // Extended result codes, sqlite.org/rescode.html.
    const int PrimaryKeyTaken = 1555;
    const int NoSuchParent = 787;
    const int NameTaken = 2067;

    static async Task<Saved<T>> Clash<T>(Func<RecordsDb> open, T sent, Guid id, CancellationToken cancel) where T : class
    {
        await using var db = open();
        if (await db.Standing<T>(id, cancel) is not { } standing)
            throw new RefusedException(Refusal.Of($"id of this {typeof(T).Name}", $"{id}", "no such row stands; save it as new, on version 0"));
        // A saving sent again after its answer was lost finds itself.
        return new(standing, Clash: JsonText.Of(standing.Row) != JsonText.Of(sent));
    }

    public static Versioned<T> Versioned<T>(this RecordsDb db, T row) where T : class =>
        new(row, db.Entry(row).Property<int>(RecordsDb.Version).CurrentValue);
}
