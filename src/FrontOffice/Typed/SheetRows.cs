using System.Text;

namespace WitnessMark.FrontOffice.Typed;

/// <summary>One row of a typed sheet, its cells trimmed.</summary>
/// <param name="Line">From 1.</param>
sealed record SheetRow(int Line, IReadOnlyList<string> Cells)
{
    public string Cell(int i) => i >= 0 && i < Cells.Count ? Cells[i] : "";
}

/// <summary>
/// Rows of a text parted by commas, semicolons or tabs. A cell that begins with a double quote ends with one; elsewhere a double quote is an inch mark.
/// </summary>
static class SheetRows
{
    /// <param name="headings">Words that open a heading row, and so cannot be ids.</param>
    public static List<SheetRow> Read(string text, IReadOnlyCollection<string> headings)
    {
        var lines = text.Split('\n');
        var separator = SeparatorOf(lines, headings);
        var rows = new List<SheetRow>();
        for (var i = 0; i < lines.Length; i++)
        {
            var line = lines[i].Trim('\r', ' ');
            if (line.Length == 0 || line[0] == '#') continue;
            var cells = Split(line, separator, new Place(i + 1));
            while (cells.Count > 0 && cells[^1].Length == 0) cells.RemoveAt(cells.Count - 1);
            if (cells.Count > 0) rows.Add(new SheetRow(i + 1, cells));
        }
        return rows;
    }

    /// <summary>What stands behind the first word of the first heading row; a comma where there is none.</summary>
    static char SeparatorOf(string[] lines, IReadOnlyCollection<string> headings)
    {
        foreach (var line in lines)
        {
            var end = line.IndexOfAny([',', ';', '\t']);
            if (end > 0 && headings.Contains(line[..end].Trim().ToLowerInvariant())) return line[end];
        }
        return ',';
    }

    static List<string> Split(string line, char separator, Place place)
    {
        var cells = new List<string>();
        var at = 0;
        while (at <= line.Length)
        {
            while (at < line.Length && line[at] == ' ') at++;
            cells.Add(at < line.Length && line[at] == '"' ? Quoted(line, separator, ref at, place) : Plain(line, separator, ref at));
        }
        return cells;
    }

    static string Plain(string line, char separator, ref int at)
    {
        var end = line.IndexOf(separator, at);
        if (end < 0) end = line.Length;
        var cell = line[at..end].Trim();
        at = end + 1;
        return cell;
    }

    static string Quoted(string line, char separator, ref int at, Place place)
    {
        var cell = new StringBuilder();
        for (at++; at < line.Length; at++)
        {
            if (line[at] != '"') cell.Append(line[at]);
            else if (at + 1 < line.Length && line[at + 1] == '"') cell.Append(line[at++]);
            else break;
        }
        var rest = at < line.Length ? line[(at + 1)..].TrimStart() : "";
        if (at >= line.Length || (rest.Length > 0 && rest[0] != separator))
            throw place.Refuse("cell", $"\"{cell}{rest}", "a cell that begins with a double quote ends with one before the next separator");
        at = rest.Length > 0 ? line.Length - rest.Length + 1 : line.Length + 1;
        return cell.ToString().Trim();
    }
}
