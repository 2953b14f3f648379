using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Stores;

/// <summary>What is set on many parts at once; what is null stays as it is.</summary>
/// <param name="AssemblyId">One of the system that the parts are in, or are put into.</param>
/// <param name="OutOfAssembly">True: the parts belong to their system directly.</param>
public sealed record PartEdit(
    Guid? SystemId = null, Guid? AssemblyId = null, bool OutOfAssembly = false, Hand? Hand = null, string? Condition = null, RouteDecision? Route = null);

/// <summary>Sets the same on many parts, as one set of changes.</summary>
public static class BulkEdit
{
    /// <summary>Only parts that become different are in the set, so its length is the count to show beforehand.</summary>
    /// <exception cref="RefusedException">A part, system or assembly is not of this vehicle, or what is set does not fit.</exception>
    public static TreeChanges Changes(VehicleTree tree, IEnumerable<Guid> parts, PartEdit edit)
    {
        var system = edit.SystemId;
        if (edit.AssemblyId is { } wanted)
        {
            if (edit.OutOfAssembly) throw new RefusedException(Refusal.Of("assembly", null, "put the parts into an assembly or take them out of theirs, not both"));
            var owner = tree.Assemblies.FirstOrDefault(a => a.Row.Id == wanted).Row?.SystemId ?? throw Unknown("assembly", wanted);
            if (system is not null && system != owner) throw new RefusedException(Refusal.Of("assembly", $"{wanted}", "choose one of the system that the parts are put into"));
            system = owner;
        }
        if (system is { } s && tree.Systems.All(row => row.Row.Id != s)) throw Unknown("system", s);
        var standing = tree.Parts.ToDictionary(p => p.Row.Id);
        var changes = ImmutableArray.CreateBuilder<RowChange<Part>>();
        foreach (var id in parts.Distinct())
        {
            if (!standing.TryGetValue(id, out var part)) throw Unknown("part", id);
            var after = After(part.Row, system, edit);
            if (Check.Of(after) is { } wrong) throw new RefusedException(wrong.In(part.Row.Name));
            if (after != part.Row) changes.Add(RowChange<Part>.To(part, after));
        }
        return new(tree.Vehicle.Row.Id, [], [], changes.ToImmutable());
    }

    static Part After(Part part, Guid? system, PartEdit edit) => part with
    {
        SystemId = system ?? part.SystemId,
        // An assembly does not follow its part into another system.
        AssemblyId = edit.AssemblyId ?? (edit.OutOfAssembly || (system is { } s && s != part.SystemId) ? null : part.AssemblyId),
        Hand = edit.Hand ?? part.Hand,
        Condition = edit.Condition ?? part.Condition,
        Route = edit.Route ?? part.Route,
    };

    static RefusedException Unknown(string what, Guid id) => new(Refusal.Of(what, $"{id}", "choose one of this vehicle"));
}
