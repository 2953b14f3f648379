using System.Collections.Immutable;
using WitnessMark.Stores;

namespace WitnessMark.Web.Client.Stores;

/// <summary>The tree as it is listed: each system with the parts that stand in it directly, then its assemblies.</summary>
public static class PartRows
{
    /// <summary>Parts of a system drawn at once; more are asked for, so that five thousand stay quick.</summary>
    public const int Chunk = 100;

    /// <summary>A run of parts under one heading; <paramref name="Assembly"/> is null for those of the system itself.</summary>
    public sealed record Group(Assembly? Assembly, ImmutableArray<Part> Parts);

    public static IEnumerable<PartWords> Words(VehicleTree tree)
    {
        var systems = tree.Systems.ToDictionary(s => s.Row.Id, s => s.Row.Name);
        var assemblies = tree.Assemblies.ToDictionary(a => a.Row.Id, a => a.Row.Name);
        return tree.Parts.Select(p => new PartWords(p.Row, systems.GetValueOrDefault(p.Row.SystemId, ""), p.Row.AssemblyId is { } a ? assemblies.GetValueOrDefault(a, "") : ""));
    }

    public static ImmutableArray<Group> Of(ImmutableArray<Part> ofSystem, IEnumerable<Assembly> assemblies)
    {
        var held = ofSystem.ToLookup(p => p.AssemblyId);
        return
        [
            .. held[null].Any() ? [new Group(null, [.. held[null]])] : Array.Empty<Group>(),
            .. assemblies.OrderBy(a => a.Order).Select(a => new Group(a, [.. held[a.Id]])),
        ];
    }

    /// <summary>The first so many parts of the groups, headings kept.</summary>
    public static IEnumerable<Group> First(ImmutableArray<Group> groups, int most)
    {
        foreach (var group in groups)
        {
            if (most <= 0) yield break;
            yield return group with { Parts = [.. group.Parts.Take(most)] };
            most -= group.Parts.Length;
        }
    }
}
