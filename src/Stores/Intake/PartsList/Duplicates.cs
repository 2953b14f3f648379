using System.Collections.Immutable;

namespace WitnessMark.Stores.Intake;

/// <summary>
/// Finds rows that seem to be there already: the same name and hand in the same system, or the same reference and hand.
/// Capitals and blanks do not count. Two parts of one name with different references are shown, and added unless the person
/// says otherwise: a list has many bolts.
/// </summary>
sealed class Duplicates
{
    readonly Dictionary<string, Seen> _named = [];
    readonly Dictionary<string, Seen> _referred = [];

    /// <summary>Parts of the vehicle that an earlier row brings up to date already; a doubled row must not change them back.</summary>
    readonly HashSet<Guid> _met = [];

    public Duplicates(VehicleTree tree)
    {
        var systems = tree.Systems.ToDictionary(s => s.Row.Id, s => s.Row.Name);
        foreach (var (part, _) in tree.Parts)
            Remember(systems.GetValueOrDefault(part.SystemId, ""), part.Name, part.Reference, part.Hand, new(part, null, part.Reference));
    }

    /// <summary>What the row doubles; null when it is new. It is remembered for the rows after it.</summary>
    public ListDuplicate? Find(ListedPart row)
    {
        var found = Named(row) ?? Referred(row);
        Remember(row.System, row.Name, row.Reference, row.Hand, new(null, row.Line, row.Reference));
        return found;
    }

    ListDuplicate? Named(ListedPart row)
    {
        if (!_named.TryGetValue(Key(row.System, row.Name, row.Hand), out var seen)) return null;
        var other = References.Of(row.Reference).ToArray() is { Length: > 0 } mine && References.Of(seen.Reference).ToArray() is { Length: > 0 } theirs && !mine.Intersect(theirs, StringComparer.OrdinalIgnoreCase).Any();
        return new(row.Line, seen.Part?.Id, seen.Line, $"{seen.Words} has the same name and hand in {row.System}{(other ? ", but another reference" : "")}.", other ? DuplicateAnswer.Add : Proposed(row, seen));
    }

    ListDuplicate? Referred(ListedPart row)
    {
        foreach (var reference in References.Of(row.Reference))
            if (_referred.TryGetValue(Key(reference, row.Hand), out var seen))
                return new(row.Line, seen.Part?.Id, seen.Line, $"{seen.Words} has the same reference {reference}.", DuplicateAnswer.Add);
        return null;
    }

    DuplicateAnswer Proposed(ListedPart row, Seen seen) =>
        seen.Part is { } part && _met.Add(part.Id) && (Merged.Of(part, row, part.AssemblyId) != part || row.Assembly != "") ? DuplicateAnswer.Update : DuplicateAnswer.Skip;

    void Remember(string system, string name, string reference, Hand hand, Seen seen)
    {
        _named.TryAdd(Key(system, name, hand), seen);
        foreach (var r in References.Of(reference)) _referred.TryAdd(Key(r, hand), seen);
    }

    static string Key(string system, string name, Hand hand) => $"{Plain(system)}\n{Plain(name)}\n{hand}";

    static string Key(string reference, Hand hand) => $"{Plain(reference)}\n{hand}";

    internal static string Plain(string text) => string.Join(' ', text.Split(' ', StringSplitOptions.RemoveEmptyEntries)).ToUpperInvariant();

    sealed record Seen(Part? Part, int? Line, string Reference)
    {
        public string Words => Part is { } part ? $"The part {part.Name}" : $"Line {Line}";
    }
}

/// <summary>The references of a part, one by one.</summary>
static class References
{
    public static IEnumerable<string> Of(string text) => text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    public static string Joined(string standing, string more) =>
        string.Join("; ", Of(standing).Concat(Of(more)).Distinct(StringComparer.OrdinalIgnoreCase));
}

/// <summary>A part brought up to date by a row of a list: what the row says counts, what it leaves open stands.</summary>
static class Merged
{
    public static Part Of(Part part, ListedPart row, Guid? assembly) => part with
    {
        Reference = References.Of(row.Reference).Except(References.Of(part.Reference), StringComparer.OrdinalIgnoreCase).Any() ? References.Joined(part.Reference, row.Reference) : part.Reference,
        Quantity = row.Quantity ?? part.Quantity,
        Condition = row.Condition == "" ? part.Condition : row.Condition,
        Route = row.Route ?? part.Route,
        AssemblyId = assembly,
    };
}
