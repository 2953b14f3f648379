using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.Maths;

namespace WitnessMark.Stores;

/// <summary>The typed parts list; systems and assemblies stand in the order they are first named.</summary>
static class PartsTable
{
    const string AssemblyColumn = "assembly";

    public static (ImmutableArray<VehicleSystem> Systems, ImmutableArray<Assembly> Assemblies, ImmutableArray<Part> Parts) Read(Vehicle vehicle, string text)
    {
        var systems = new List<VehicleSystem>();
        var assemblies = new List<Assembly>();
        var parts = new Dictionary<Guid, Part>();
        var table = CsvTable.Read(text, AssemblyColumn, ["system", "part", "reference", "hand", "quantity", "condition", "route", "reason", "decided"]);
        foreach (var row in table.Value.Rows)
        {
            var system = systems.Find(s => s.Name == row["system"]);
            if (system is null)
            {
                system = new(NamedId.Of(vehicle.Id, row["system"]), vehicle.Id, row["system"], systems.Count);
                if (Check.Of(system) is { } nameless) throw new RefusedException(nameless.OnLine(row.Line));
                systems.Add(system);
            }
            var part = ReadPart(system, Of(assemblies, system, row), row);
            if (!parts.TryAdd(part.Id, part)) throw new RefusedException(row.Refuse("part", "this part and hand stands in the list already"));
        }
        return ([.. systems], [.. assemblies], [.. parts.Values]);
    }

    static Assembly? Of(List<Assembly> assemblies, VehicleSystem system, CsvRow row)
    {
        if (row.Optional(AssemblyColumn) is not { Length: > 0 } name) return null;
        var assembly = assemblies.Find(a => a.SystemId == system.Id && a.Name == name);
        if (assembly is not null) return assembly;
        assembly = new(NamedId.Of(system.Id, $"assembly {name}"), system.Id, name, assemblies.Count(a => a.SystemId == system.Id));
        if (Check.Of(assembly) is { } wrong) throw new RefusedException(wrong.OnLine(row.Line));
        assemblies.Add(assembly);
        return assembly;
    }

    static Part ReadPart(VehicleSystem system, Assembly? assembly, CsvRow row)
    {
        var hand = VehicleFile.HandOf(row);
        if (!int.TryParse(row["quantity"], NumberStyles.None, CultureInfo.InvariantCulture, out var quantity))
            throw new RefusedException(row.Refuse("quantity", "give a whole number from 1 up"));
        var id = NamedId.Of(system.Id, $"{row["part"]}/{hand}");
        var part = new Part(id, system.Id, row["part"], row["reference"], hand, quantity, row["condition"], ReadRoute(row), assembly?.Id);
        return Check.Of(part) is { } wrong ? throw new RefusedException(wrong.OnLine(row.Line)) : part;
    }

    static RouteDecision? ReadRoute(CsvRow row)
    {
        if (row["route"] == "") return null;
        if (Routes.Read(row["route"]) is not { } route)
            throw new RefusedException(row.Refuse("route", $"the routes are {Routes.All}; leave it empty while undecided"));
        return new(route, row["reason"], VehicleFile.Date(row, "decided"));
    }
}
