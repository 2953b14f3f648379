using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Intake;

/// <summary>What a column of a typed list holds.</summary>
public enum ListField { Ignored, System, Assembly, Part, Reference, Hand, Quantity, Condition, Route, Reason, Decided }

/// <summary>What each column of a typed list is taken for.</summary>
/// <param name="HeadRow">The first row names the columns.</param>
/// <param name="Fields">One for each column, from the left.</param>
public sealed record ColumnMap(bool HeadRow, ImmutableArray<ListField> Fields)
{
    /// <summary>
    /// As the head row says it, in the words people use; of two columns that could be the same thing the first, but every
    /// reference. It is a head row when it names the part, or two columns of any kind.
    /// </summary>
    public static ColumnMap Propose(ImmutableArray<string> first)
    {
        var fields = ImmutableArray.CreateBuilder<ListField>();
        foreach (var name in first)
        {
            var field = ColumnNames.Read(name);
            fields.Add(field != ListField.Reference && fields.Contains(field) ? ListField.Ignored : field);
        }
        // "Item" is a number on a plate when something else names the part, else the part itself.
        if (!fields.Contains(ListField.Part) && first.IndexOf("item", StringComparer.OrdinalIgnoreCase) is >= 0 and var item) fields[item] = ListField.Part;
        var head = fields.Contains(ListField.Part) || fields.Count(f => f != ListField.Ignored) > 1;
        return new(head, head ? fields.ToImmutable() : [.. first.Select(_ => ListField.Ignored)]);
    }

    /// <summary>Which of the first rows names the columns: the one that names most, as titles may stand above it; 0 when none does.</summary>
    public static int HeadAt(IEnumerable<ImmutableArray<string>> first) => first
        .Select((cells, at) => (Named: Propose(cells) is { HeadRow: true } map ? map.Fields.Count(f => f != ListField.Ignored) : 0, at))
        .Aggregate((best, next) => next.Named > best.Named ? next : best).at;

    /// <summary>The same with some columns changed, as <c>Part No=reference, 3=quantity</c>: by name or by number from 1.</summary>
    public Parsed<ColumnMap> With(string changes, ImmutableArray<string> head)
    {
        var fields = Fields.ToBuilder();
        foreach (var change in changes.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var cut = change.LastIndexOf('=');
            var name = cut < 0 ? change : change[..cut].Trim();
            var column = HeadRow ? head.IndexOf(name, StringComparer.OrdinalIgnoreCase) : -1;
            if (column < 0 && int.TryParse(name, out var number) && number >= 1 && number <= fields.Count) column = number - 1;
            if (column < 0) return Refusal.Of("column", name, $"the columns are {string.Join(", ", HeadRow ? head : head.Select((_, i) => $"{i + 1}"))}");
            if (cut < 0 || !Enum.TryParse<ListField>(change[(cut + 1)..].Trim(), ignoreCase: true, out var field) || !Enum.IsDefined(field))
                return Refusal.Of($"what column {name} holds", cut < 0 ? null : change[(cut + 1)..], $"give one of {string.Join(", ", Enum.GetNames<ListField>()).ToLowerInvariant()}");
            for (var i = 0; i < fields.Count; i++)
                if (fields[i] == field && field != ListField.Reference) fields[i] = ListField.Ignored;
            fields[column] = field;
        }
        return this with { Fields = fields.ToImmutable() };
    }

    /// <summary>Why nothing can be read by it yet; null when something can.</summary>
    public Refusal? Wrong =>
        Fields.IsDefaultOrEmpty || !Fields.Contains(ListField.Part) ? Refusal.Of("column of the part's name", null, "say which column names the part")
        : Fields.Where(f => f is not (ListField.Ignored or ListField.Reference)).GroupBy(f => f).FirstOrDefault(g => g.Count() > 1) is { } twice
            ? Refusal.Of("columns", $"{twice.Key}", "only references may stand in several columns")
        : null;
}
