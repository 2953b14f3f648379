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
        var separator = lines.Find(l => First(l) is "feature" or "kind" or "instrument") is { } first ? first.FirstOrDefault(c => c is ',' or ';' or '\t', ',') : ',';
        var heading = lines.FindLastIndex(End(lines) - 1, l => First(l) == table);
        var given = cells.Where(c => c.Cell.Trim().Length > 0).ToList();
        if (heading < 0 || given.Exists(c => !Columns(lines[heading]).Contains(c.Column)))
        {
            var at = heading < 0 ? End(lines) : Last(lines, heading);
            lines.Insert(at, usual.Replace(',', separator));
            if (heading < 0 && at > 0 && lines[at - 1].Length > 0) lines.Insert(at++, "");
            heading = at;
        }
        var row = string.Join(separator, Columns(lines[heading]).Select(c => Quoted(given.FirstOrDefault(g => g.Column == c).Cell?.Trim() ?? "", separator))).TrimEnd(separator);
        lines.Insert(Last(lines, heading), row);
        return string.Join('\n', lines) + "\n";

        string[] Columns(string line) => [.. line.Split(separator).Select(c => c.Trim().ToLowerInvariant())];
    }

    /// <summary>Behind the last row of the table that a heading opens.</summary>
    static int Last(List<string> lines, int heading)
    {
        var (at, end) = (heading + 1, End(lines));
        for (var i = heading + 1; i < end && First(lines[i]) is not ("feature" or "kind" or "instrument"); i++)
            if (lines[i].Trim().Length > 0 && lines[i][0] != '#') at = i + 1;
        return at;
    }

    static string First(string line) => line.Split([',', ';', '\t'])[0].Trim().ToLowerInvariant();

    /// <summary>Where the flat rows of faces begin.</summary>
    static int End(List<string> lines) => lines.FindIndex(l => First(l) == TypedSolid.FaceRow) is >= 0 and var at ? at : lines.Count;

    static string Quoted(string cell, char separator) =>
        cell.Contains(separator) || cell.StartsWith('"') || cell.Contains('\n') ? $"\"{cell.ReplaceLineEndings(" ").Replace("\"", "\"\"")}\"" : cell;
}
