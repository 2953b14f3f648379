using System.Collections.Immutable;
using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using WitnessMark.PlanningOffice;
using WitnessMark.Stores;

namespace WitnessMark.Records;

/// <summary>What stands in the way of taking rows off the tree.</summary>
static partial class TreeRemains
{
    /// <summary>What would lose its owner: rows added meanwhile to a system, an assembly or a part that is to be taken off.</summary>
    public static async Task<List<string>> StillCarrying(RecordsDb db, TreeChanges changes, CancellationToken cancel)
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
            .. (await Noted(db, changes.VehicleId, parts, cancel)).Select(part => $"{Named(part)} has been noted elsewhere in the stores since."),
            .. jobs.Select(r => $"{(r.PartId is { } id && parts.TryGetValue(id, out var part) ? Named(part) : $"The system {systems[r.SystemId!.Value].Name}")} has the job {r.Title}."),
        ];
    }

    /// <summary>Parts that a row of the stores' desk names: those rows are texts, so no foreign key guards them.</summary>
    static async Task<IEnumerable<Part>> Noted(RecordsDb db, Guid vehicle, Dictionary<Guid, Part> parts, CancellationToken cancel)
    {
        if (parts.Count == 0) return [];
        var texts = await db.Set<KeptFact>().Where(f => f.VehicleId == vehicle).Select(f => f.Text)
            .Concat(db.Set<KeptDecision>().Where(d => d.VehicleId == vehicle).Select(d => d.Text)).ToListAsync(cancel);
        return texts.SelectMany(t => Ids.Matches(t)).Select(m => Guid.Parse(m.ValueSpan)).Distinct().Where(parts.ContainsKey).Select(id => parts[id]);
    }

    [GeneratedRegex("[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Ids { get; }

    public static string Named(Part p) => $"The part {p.Name}{(p.Hand == Hand.None ? "" : $" {p.Hand}")}";

    static IEnumerable<T> Gone<T>(ImmutableArray<RowChange<T>> changes) where T : class => changes.Where(c => c.After is null).Select(c => c.Row);
}
