using System.Collections.Immutable;
using System.Text;
using WitnessMark.Maths;

namespace WitnessMark.Stores;

/// <summary>
/// A small typed table: comma-separated with a head row (RFC 4180 quoting, one line per row), blank lines and lines that
/// begin with # left out.
/// </summary>
sealed record CsvTable(ImmutableArray<string> Head, ImmutableArray<CsvRow> Rows)
{
    /// <param name="wanted">The columns that must be there; others are refused, for a misspelt column would be lost in silence.</param>
    public static Parsed<CsvTable> Read(string text, params ReadOnlySpan<string> wanted) => Read(text, "", wanted);

    /// <param name="optional">One more column that may be there.</param>
    public static Parsed<CsvTable> Read(string text, string optional, ReadOnlySpan<string> wanted)
    {
        ImmutableArray<string>? head = null;
        var rows = ImmutableArray.CreateBuilder<CsvRow>();
        var lines = text.TrimStart('\uFEFF').Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i].TrimEnd('\r');
            if (line.Length == 0 || line.TrimStart() is "" or ['#', ..]) continue;
            var cells = Cells(line, i + 1);
            if (!cells.Ok) return cells.Refusal!;
            if (head is null)
            {
                if (WrongHead(cells.Value, optional, wanted) is { } wrong) return wrong.OnLine(i + 1);
                head = cells.Value;
            }
            else if (cells.Value.Length != head.Value.Length)
            {
                return Refusal.Of("columns", $"{cells.Value.Length}", $"this table has {head.Value.Length}; quote a cell that holds a comma", i + 1);
            }
            else rows.Add(new(i + 1, head.Value, cells.Value));
        }
        if (head is null) return Refusal.Of("head row", null, $"it must name the columns {string.Join(",", wanted.ToArray())}", 1);
        return new CsvTable(head.Value, rows.ToImmutable());
    }

    static Refusal? WrongHead(ImmutableArray<string> head, string optional, ReadOnlySpan<string> wanted)
    {
        var columns = string.Join(",", wanted.ToArray());
        foreach (var w in wanted)
            if (!head.Contains(w)) return Refusal.Of("head row", string.Join(",", head), $"the column {w} is missing; wanted are {columns}");
        foreach (var h in head)
            if (h != optional && !wanted.Contains(h)) return Refusal.Of("column", h, $"the columns are {columns}");
        return head.Distinct().Count() == head.Length ? null : Refusal.Of("head row", string.Join(",", head), "each column is named once");
    }

    static Parsed<ImmutableArray<string>> Cells(string line, int number)
    {
        var cells = ImmutableArray.CreateBuilder<string>();
        var cell = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < line.Length; i++)
        {
            var c = line[i];
            if (quoted && c == '"' && i + 1 < line.Length && line[i + 1] == '"') { cell.Append('"'); i++; }
            else if (quoted) { if (c == '"') quoted = false; else cell.Append(c); }
            // A quote opens a quoted cell only at its beginning: 3 5/16" is an inch mark.
            else if (c == '"' && cell.ToString().Trim().Length == 0) { quoted = true; cell.Clear(); }
            else if (c == ',') { cells.Add(cell.ToString().Trim()); cell.Clear(); }
            else cell.Append(c);
        }
        if (quoted) return Refusal.Of("quotes", line, "a quoted cell must end with a quote on the same line", number);
        cells.Add(cell.ToString().Trim());
        return cells.ToImmutable();
    }
}

/// <summary>One row with the line it stands on.</summary>
sealed record CsvRow(int Line, ImmutableArray<string> Head, ImmutableArray<string> Cells)
{
    public string this[string column] => Cells[Head.IndexOf(column)];

    /// <summary>Empty, too, when the table has no such column.</summary>
    public string Optional(string column) => Head.Contains(column) ? this[column] : "";

    public Refusal Refuse(string column, string wanted) => Refusal.Of(column, this[column], wanted, Line);
}
