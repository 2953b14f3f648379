using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.Records;

/// <summary>
/// A set of changes to one vehicle's tree in one transaction. It takes the write lock first, so that what is looked at is
/// what is changed.
/// </summary>
static class TreeEdits
{
    public static async Task<Applied> Apply(Func<RecordsDb> open, TreeChanges changes, CancellationToken cancel)
    {
        await using var db = open();
        // Each row's state is said outright below; looking for changes in thousands of rows would take longer than keeping them.
        db.ChangeTracker.AutoDetectChangesEnabled = false;
        await using var all = await db.Database.BeginTransactionAsync(cancel);
        var inTheWay = ImmutableArray.CreateBuilder<string>();
        inTheWay.AddRange(await Stage(db, changes.Systems, s => s.Id, s => $"The system {s.Name}", Check.Of, cancel));
        inTheWay.AddRange(await Stage(db, changes.Assemblies, a => a.Id, a => $"The assembly {a.Name}", Check.Of, cancel));
        inTheWay.AddRange(await Stage(db, changes.Parts, p => p.Id, TreeRemains.Named, Check.Of, cancel));
        inTheWay.AddRange(await TreeRemains.StillCarrying(db, changes, cancel));
        if (inTheWay.Count > 0) return new(0, inTheWay.ToImmutable());
        if (await db.Strangers(changes, cancel) is { } stranger) throw new RefusedException(stranger);
        try
        {
            await db.SaveChangesAsync(cancel);
        }
        catch (DbUpdateException e) when (e.Orphans())
        {
            throw new RefusedException(Refusal.Of("system or assembly of a part", null, "what it belongs to must stand or be among the changes"));
        }
        if (await db.Misplaced(Rows(changes.Parts), cancel) is { } misplaced) throw new RefusedException(misplaced);
        await all.CommitAsync(cancel);
        return new(changes.Count, []);
    }

    /// <summary>A part's assembly is one of its own system. Null when that is so for all of them.</summary>
    public static async Task<Refusal?> Misplaced(this RecordsDb db, IReadOnlyList<Part> parts, CancellationToken cancel)
    {
        var wanted = parts.Select(p => p.AssemblyId).OfType<Guid>().Distinct().ToList();
        if (wanted.Count == 0) return null;
        var systems = await db.Set<Assembly>().Where(a => wanted.Contains(a.Id)).ToDictionaryAsync(a => a.Id, a => a.SystemId, cancel);
        return parts.FirstOrDefault(p => p.AssemblyId is { } a && systems.TryGetValue(a, out var system) && system != p.SystemId) is { } part
            ? Refusal.Of($"assembly of {part.Name}", null, "choose one of the system that the part belongs to, or none")
            : null;
    }

    /// <summary>Puts the changes into the unit of work.</summary>
    /// <returns>A sentence for each row that stands at another version than the change was built on.</returns>
    static async Task<List<string>> Stage<T>(
        RecordsDb db, ImmutableArray<RowChange<T>> changes, Func<T, Guid> id, Func<T, string> name, Func<T, Refusal?> check, CancellationToken cancel) where T : class
    {
        if (changes.IsDefault || changes.Any(c => c is null || (c.Before ?? c.After) is null))
            throw new RefusedException(Refusal.Of($"changes of {typeof(T).Name}", null, "send a list of rows before and after; it may be empty"));
        var ids = changes.Select(c => id(c.Row)).ToList();
        if (ids.Distinct().Count() < ids.Count) throw new RefusedException(Refusal.Of($"changes of {typeof(T).Name}", "the same row twice", "change each row once"));
        var versions = await db.Set<T>().Where(r => ids.Contains(EF.Property<Guid>(r, "Id")))
            .Select(r => new { Id = EF.Property<Guid>(r, "Id"), Version = EF.Property<int>(r, RecordsDb.Version) })
            .ToDictionaryAsync(r => r.Id, r => r.Version, cancel);
        var told = new List<string>();
        foreach (var change in changes)
        {
            if (change.After is { } after && check(after) is { } wrong) throw new RefusedException(wrong);
            var stands = versions.GetValueOrDefault(id(change.Row));
            if (stands != change.BasedOn) told.Add(Meanwhile(name(change.Row), stands, change.BasedOn));
            else Stage(db, change);
        }
        return told;
    }

    static void Stage<T>(RecordsDb db, RowChange<T> change) where T : class
    {
        var entry = db.Entry(change.Row);
        entry.State = change.BasedOn == 0 ? EntityState.Added : change.After is null ? EntityState.Deleted : EntityState.Modified;
        var version = entry.Property<int>(RecordsDb.Version);
        version.CurrentValue = change.BasedOn + 1;
        version.OriginalValue = change.BasedOn;
    }

    static string Meanwhile(string name, int stands, int basedOn) =>
        stands == 0 ? $"{name} is no longer there."
        : basedOn == 0 ? $"{name} is there already."
        : $"{name} was changed meanwhile (version {stands} stands).";

    /// <summary>Every row belongs to the vehicle that the set names.</summary>
    static async Task<Refusal?> Strangers(this RecordsDb db, TreeChanges changes, CancellationToken cancel)
    {
        var own = (await db.Set<VehicleSystem>().AsNoTracking().Where(s => s.VehicleId == changes.VehicleId).Select(s => s.Id).ToListAsync(cancel)).ToHashSet();
        own.UnionWith(Rows(changes.Systems).Select(s => s.Id));
        return Rows(changes.Systems).Any(s => s.VehicleId != changes.VehicleId)
            || Rows(changes.Assemblies).Any(a => !own.Contains(a.SystemId))
            || Rows(changes.Parts).Any(p => !own.Contains(p.SystemId))
            ? Refusal.Of("vehicle of the changes", $"{changes.VehicleId}", "all rows of one set belong to one vehicle's systems")
            : null;
    }

    static List<T> Rows<T>(ImmutableArray<RowChange<T>> changes) where T : class => [.. changes.Select(c => c.After).OfType<T>()];
}
