using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Intake;

/// <summary>From a list as understood, and what the person said of its duplicates, to one set of changes.</summary>
public static class ListIntake
{
    /// <param name="answers">By line; lines not named go as proposed.</param>
    /// <exception cref="RefusedException">The list could not be read yet, or an answer does not fit.</exception>
    public static TreeChanges Changes(ListPreview preview, VehicleTree tree, IReadOnlyDictionary<int, DuplicateAnswer>? answers = null)
    {
        if (preview.Missing is { } missing) throw new RefusedException(missing);
        var sheet = new Sheet(tree);
        var duplicates = preview.Duplicates.ToDictionary(d => d.Line);
        if (answers?.Keys.FirstOrDefault(line => !duplicates.ContainsKey(line)) is > 0 and var stranger)
            throw new RefusedException(Refusal.Of("answer for a duplicate", $"line {stranger}", "this line doubles nothing"));
        foreach (var row in preview.Parts)
        {
            var duplicate = duplicates.GetValueOrDefault(row.Line);
            var answer = duplicate is null ? DuplicateAnswer.Add : answers?.TryGetValue(row.Line, out var said) is true ? said : duplicate.Proposed;
            if (answer == DuplicateAnswer.Add) sheet.Add(row);
            else if (answer == DuplicateAnswer.Update) sheet.Update(duplicate?.PartId ?? throw Twice(row.Line), row);
        }
        return sheet.Changes;
    }

    static RefusedException Twice(int line) =>
        new(Refusal.Of("answer for a duplicate", "update", "a row that doubles an earlier row is skipped or added", line));

    /// <summary>The tree while rows are put into it.</summary>
    sealed class Sheet(VehicleTree tree)
    {
        readonly Guid _vehicle = tree.Vehicle.Row.Id;
        readonly Dictionary<string, VehicleSystem> _systems = ByName(tree.Systems, s => Duplicates.Plain(s.Name));
        readonly Dictionary<string, Assembly> _assemblies = ByName(tree.Assemblies, a => Key(a.SystemId, a.Name));
        readonly Dictionary<Guid, Versioned<Part>> _standing = tree.Parts.ToDictionary(p => p.Row.Id);
        readonly Dictionary<Guid, int> _assembliesIn = tree.Assemblies.GroupBy(a => a.Row.SystemId).ToDictionary(g => g.Key, g => g.Max(a => a.Row.Order) + 1);
        readonly HashSet<Guid> _taken = [.. tree.Parts.Select(p => p.Row.Id)];
        readonly List<VehicleSystem> _newSystems = [];
        readonly List<Assembly> _newAssemblies = [];
        readonly List<Part> _newParts = [];
        readonly Dictionary<Guid, Part> _changed = [];
        int _order = tree.Systems.IsEmpty ? 0 : tree.Systems.Max(s => s.Row.Order) + 1;

        public TreeChanges Changes => new(_vehicle,
            [.. _newSystems.Select(RowChange<VehicleSystem>.Add)],
            [.. _newAssemblies.Select(RowChange<Assembly>.Add)],
            [
                .. _changed.Where(c => c.Value != _standing[c.Key].Row).Select(c => RowChange<Part>.To(_standing[c.Key], c.Value)),
                .. _newParts.Select(RowChange<Part>.Add),
            ]);

        public void Add(ListedPart row)
        {
            var system = System(row.System);
            var assembly = row.Assembly == "" ? null : Assembly(system, row.Assembly);
            _newParts.Add(row.As(FreeId(system.Id, row), system.Id, assembly?.Id));
        }

        public void Update(Guid id, ListedPart row)
        {
            var part = _changed.GetValueOrDefault(id) ?? _standing[id].Row;
            var system = tree.Systems.FirstOrDefault(s => s.Row.Id == part.SystemId).Row;
            // A part found by its reference stays in the system it stands in.
            var assembly = row.Assembly == "" || system is null || Duplicates.Plain(system.Name) != Duplicates.Plain(row.System) ? part.AssemblyId : Assembly(system, row.Assembly).Id;
            _changed[id] = Merged.Of(part, row, assembly);
        }

        VehicleSystem System(string name)
        {
            if (_systems.TryGetValue(Duplicates.Plain(name), out var system)) return system;
            system = new(NamedId.Of(_vehicle, name), _vehicle, name, _order++);
            _newSystems.Add(system);
            return _systems[Duplicates.Plain(name)] = system;
        }

        Assembly Assembly(VehicleSystem system, string name)
        {
            if (_assemblies.TryGetValue(Key(system.Id, name), out var assembly)) return assembly;
            var order = _assembliesIn[system.Id] = _assembliesIn.GetValueOrDefault(system.Id) + 1;
            assembly = new(NamedId.Of(system.Id, $"assembly {name}"), system.Id, name, order - 1);
            _newAssemblies.Add(assembly);
            return _assemblies[Key(system.Id, name)] = assembly;
        }

        /// <summary>It follows from what the row says, so that the same list taken twice is told of and not doubled.</summary>
        Guid FreeId(Guid system, ListedPart row)
        {
            var name = $"{row.Assembly}/{row.Name}/{row.Hand}/{row.Reference}";
            var id = NamedId.Of(system, name);
            for (var n = 2; !_taken.Add(id); n++) id = NamedId.Of(system, $"{name}/{n}");
            return id;
        }

        static string Key(Guid system, string name) => $"{system}\n{Duplicates.Plain(name)}";

        static Dictionary<string, T> ByName<T>(ImmutableArray<Versioned<T>> rows, Func<T, string> name)
        {
            var found = new Dictionary<string, T>();
            foreach (var (row, _) in rows) found.TryAdd(name(row), row);
            return found;
        }
    }
}
