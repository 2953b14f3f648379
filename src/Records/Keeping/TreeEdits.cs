using System.Collections.Immutable;
using Microsoft.EntityFrameworkCore;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
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
        await using var all = await db.Database.BeginTransactionAsync(cancel);
        var inTheWay = ImmutableArray.CreateBuilder<string>();
        inTheWay.AddRange(await Stage(db, changes.Systems, s => s.Id, s => $"The system {s.Name}", Check.Of, cancel));
        inTheWay.AddRange(await Stage(db, changes.Assemblies, a => a.Id, a => $"The assembly {a.Name}", Check.Of, cancel));
        inTheWay.AddRange(await Stage(db, changes.Parts, p => p.Id, Named, Check.Of, cancel));
        inTheWay.AddRange(await StillCarrying(db, changes, cancel));
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
            .ToDictionaryAsync(r => EF.Property<Guid>(r, "Id"), r => EF.Property<int>(r, RecordsDb.Version), cancel);
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

    /// <summary>What would lose its owner: rows added meanwhile to a system, an assembly or a part that is to be taken off.</summary>
    static async Task<List<string>> StillCarrying(RecordsDb db, TreeChanges changes, CancellationToken cancel)
    {
        var systems = Gone(changes.Systems).ToDictionary(s => s.Id);
        var assemblies = Gone(changes.Assemblies).ToDictionary(a => a.Id);
        var parts = Gone(changes.Parts).ToDictionary(p => p.Id);
        if (systems.Count + assemblies.Count + parts.Count == 0) return [];
        List<Guid> s = [.. systems.Keys], a = [.. assemblies.Keys], p = [.. parts.Keys];
        var moved = changes.Parts.Select(c => c.Row.Id).ToHashSet();
        var left = await db.Set<Part>().Where(r => s.Contains(r.SystemId) || (r.AssemblyId != null && a.Contains(r.AssemblyId.Value)))
            .Select(r => new { r.Id, r.Name, r.SystemId, r.AssemblyId }).ToListAsync(cancel);
        var samples = await db.Set<PartSample>().Where(r => p.Contains(r.PartId)).Select(r => new { r.PartId, r.Title }).ToListAsync(cancel);
        var jobs = await db.Set<Job>().Where(r => (r.PartId != null && p.Contains(r.PartId.Value)) || (r.SystemId != null && s.Contains(r.SystemId.Value)))
            .Select(r => new { r.PartId, r.SystemId, r.Title }).ToListAsync(cancel);
        return
        [
            .. left.Where(r => !moved.Contains(r.Id)).Select(r => $"The part {r.Name} was put into {(systems.TryGetValue(r.SystemId, out var of) ? of.Name : assemblies[r.AssemblyId!.Value].Name)} meanwhile."),
            .. samples.Select(r => $"{Named(parts[r.PartId])} has the sample {r.Title}."),
            .. jobs.Select(r => $"{(r.PartId is { } id && parts.TryGetValue(id, out var part) ? Named(part) : $"The system {systems[r.SystemId!.Value].Name}")} has the job {r.Title}."),
        ];
    }

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

    static IEnumerable<T> Gone<T>(ImmutableArray<RowChange<T>> changes) where T : class => changes.Where(c => c.After is null).Select(c => c.Row);

    static string Named(Part p) => $"The part {p.Name}{(p.Hand == Hand.None ? "" : $" {p.Hand}")}";
}
