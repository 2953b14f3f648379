namespace WitnessMark.FrontOffice.MeasureSolid.Rows;

/// <summary>Adds rows to a typed sheet in space and takes them out, leaving everything else as the person typed it.</summary>
public static class SolidText
{
    const string Features = "feature,kind,on,from,to,x,y,z,way,size", Readings = "kind,from,to,value,instrument,at,pin,note";

    /// <param name="cells">By the names of their columns; the id under <c>feature</c>.</param>
    public static string WithFeature(string text, params (string Column, string Cell)[] cells) => With(text, Features, cells);

    /// <param name="cells">By the names of their columns.</param>
    public static string WithReading(string text, params (string Column, string Cell)[] cells) => With(text, Readings, cells);

    /// <param name="line">From 1.</param>
    public static string Without(string text, int line)
    {
        var lines = text.Split('\n').ToList();
        if (line >= 1 && line <= lines.Count) lines.RemoveAt(line - 1);
        return string.Join('\n', lines);
    }

    /// <summary>The row goes behind the last of its table; where the heading lacks a column that is needed, a heading of its own comes before it.</summary>
    static string With(string text, string usual, (string Column, string Cell)[] cells)
    {
        var table = usual[..usual.IndexOf(',')];
        var lines = text.ReplaceLineEndings("\n").TrimEnd('\n').Split('\n').ToList();
        var end = lines.FindIndex(l => First(l) == TypedSolid.FaceRow);
        if (end < 0) end = lines.Count;
        var heading = lines.FindLastIndex(end - 1, l => First(l) == table);
        var columns = heading < 0 ? [] : lines[heading].Split(Separator(lines[heading])).Select(c => c.Trim().ToLowerInvariant()).ToList();
        var given = cells.Where(c => c.Cell.Trim().Length > 0).ToList();
        if (heading < 0 || given.Exists(c => !columns.Contains(c.Column)))
        {
            var at = heading < 0 ? end : Last(lines, heading, end);
            lines.InsertRange(at, [.. heading < 0 && at > 0 && lines[at - 1].Length > 0 ? [""] : Array.Empty<string>(), usual]);
            heading = lines.FindIndex(at, l => l == usual);
            (columns, end) = ([.. usual.Split(',')], lines.FindIndex(l => First(l) == TypedSolid.FaceRow) is var f && f < 0 ? lines.Count : f);
        }
        var separator = Separator(lines[heading]);
        var row = string.Join(separator, columns.Select(c => Quoted(given.FirstOrDefault(g => g.Column == c).Cell?.Trim() ?? "", separator))).TrimEnd(separator);
        lines.Insert(Last(lines, heading, end), row);
        return string.Join('\n', lines) + "\n";
    }

    /// <summary>Behind the last row of the table that a heading opens.</summary>
    static int Last(List<string> lines, int heading, int end)
    {
        var at = heading + 1;
        for (var i = heading + 1; i < end && First(lines[i]) is not ("feature" or "kind" or "instrument"); i++)
            if (lines[i].Trim().Length > 0 && lines[i][0] != '#') at = i + 1;
        return at;
    }

    static string First(string line) => line.Split([',', ';', '\t'])[0].Trim().ToLowerInvariant();

    static char Separator(string heading) => heading.FirstOrDefault(c => c is ',' or ';' or '\t') is var c && c == default ? ',' : c;

    static string Quoted(string cell, char separator) =>
        cell.Contains(separator) || cell.StartsWith('"') || cell.Contains('\n') ? $"\"{cell.ReplaceLineEndings(" ").Replace("\"", "\"\"")}\"" : cell;
}
