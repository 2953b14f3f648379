using System.Collections.Immutable;

namespace WitnessMark.FrontOffice.MakeShape;

/// <summary>A value to fill in, with words for it.</summary>
public sealed record ShapeField(string Label, ShapeNode Value);

/// <summary>A list of like things, a row each; a cell is null where its row does not say it.</summary>
public sealed record ShapeTable(string Title, ShapeNode List, ImmutableArray<string> Columns, ImmutableArray<ImmutableArray<ShapeNode?>> Rows)
{
    /// <summary>The text with a cell written; null where such a cell cannot be added.</summary>
    public string? With(string text, int row, int column, string written)
    {
        if (Rows[row][column] is { } cell) return cell.With(text, written);
        return KeyOf(column) is { } key ? List.Items[row].WithValue(text, key, written) : null;
    }

    /// <summary>The key of a column whose values stand in the rows themselves.</summary>
    public string? KeyOf(int column) =>
        List.Items.SelectMany(i => i.Items).FirstOrDefault(v => v.Kind == NodeKind.Value && ShapeForm.Words(v.Name) == Columns[column])?.Name;
}

/// <summary>A typed shape as fields and tables, whatever its kind: single values are fields, lists of things are tables (stations, holes, faces).</summary>
public sealed record ShapeForm(ImmutableArray<ShapeField> Fields, ImmutableArray<ShapeTable> Tables)
{
    public static ShapeForm Of(ShapeNode whole)
    {
        var (fields, tables) = (ImmutableArray.CreateBuilder<ShapeField>(), ImmutableArray.CreateBuilder<ShapeTable>());
        Sort(whole, "", fields, tables);
        return new(fields.ToImmutable(), tables.ToImmutable());
    }

    static void Sort(ShapeNode node, string path, ImmutableArray<ShapeField>.Builder fields, ImmutableArray<ShapeTable>.Builder tables)
    {
        foreach (var item in node.Items)
        {
            var label = path.Length == 0 ? Words(item.Name) : $"{path}, {Words(item.Name)}";
            if (item.Kind == NodeKind.Value) fields.Add(new(label, item));
            else if (item.Kind == NodeKind.Thing || item.Items.All(i => i.Kind == NodeKind.Value)) Sort(item, label, fields, tables);
            else Table(item, label, fields, tables);
        }
    }

    static void Table(ShapeNode list, string title, ImmutableArray<ShapeField>.Builder fields, ImmutableArray<ShapeTable>.Builder tables)
    {
        if (list.Items.All(i => i.Kind == NodeKind.Thing))
        {
            var rows = list.Items.Select(i => Values(i, "").ToList()).ToList();
            ImmutableArray<string> columns = [.. rows.SelectMany(r => r.Select(v => v.Label)).Distinct()];
            tables.Add(new(title, list, columns, [.. rows.Select(r => (ImmutableArray<ShapeNode?>)[.. columns.Select(c => r.FirstOrDefault(v => v.Label == c).Value)])]));
        }
        // Lists within a row have a table of their own under the row's name.
        foreach (var row in list.Items)
            foreach (var inner in row.Items.Where(i => i.Kind == NodeKind.List && i.Items.Any(k => k.Kind != NodeKind.Value)))
                Table(inner, $"{title}, {row.Name}: {Words(inner.Name)}", fields, tables);
    }

    static IEnumerable<(string Label, ShapeNode Value)> Values(ShapeNode thing, string path)
    {
        foreach (var item in thing.Items)
        {
            var label = path.Length == 0 ? Words(item.Name) : $"{path} {Words(item.Name)}";
            if (item.Kind == NodeKind.Value) yield return (label, item);
            else if (item.Kind == NodeKind.Thing || item.Items.All(i => i.Kind == NodeKind.Value))
                foreach (var inner in Values(item, label)) yield return inner;
        }
    }

    internal static string Words(string key) => key.Replace('_', ' ');
}
