using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.Trade;

/// <summary>
/// The room's own data files: comma separated, no quoting, '#' opens a remark, the first other line names the columns.
/// They are built into the assembly, so that they are there in the browser too.
/// </summary>
static class Table
{
    /// <param name="path">Folder and file, as in the source tree.</param>
    public static ImmutableArray<T> Read<T>(string path, Func<Row, T> of)
    {
        var name = $"{typeof(Table).Namespace}.{path.Replace('/', '.')}";
        using var stream = typeof(Table).Assembly.GetManifestResourceStream(name)
            ?? throw new RefusedException(Refusal.Of("table", path, "no such data file"));
        using var reader = new StreamReader(stream);
        var rows = ImmutableArray.CreateBuilder<T>();
        string[]? columns = null;
        for (var line = 1; reader.ReadLine() is { } text; line++)
        {
            if (text.Length == 0 || text[0] == '#') continue;
            var cells = text.Split(',');
            if (columns is null) columns = cells;
            else rows.Add(of(new Row(columns, cells, line)));
        }
        return rows.ToImmutable();
    }
}

/// <summary>One line of a data file.</summary>
sealed class Row(string[] columns, string[] cells, int line)
{
    public string this[string column] =>
        Array.IndexOf(columns, column) is var i && i >= 0 && cells.Length == columns.Length
            ? cells[i]
            : throw Refused(column, string.Join(',', cells), "the line has not the columns of the heading");

    public bool Has(string column) => columns.Contains(column) && this[column].Length > 0;

    public double Number(string column) =>
        double.TryParse(this[column], NumberStyles.Float, CultureInfo.InvariantCulture, out var value)
            ? value
            : throw Refused(column, this[column], "write a number");

    public double? NumberOrNone(string column) => Has(column) ? Number(column) : null;

    /// <summary>A cell in inches, decimal or fraction, as mm.</summary>
    public double Inches(string column)
    {
        var read = Numeral.Read(this[column], DecimalMark.Point, column);
        return read.Refusal is { } r ? throw new RefusedException(r.OnLine(line)) : Inch.ToMm(read.Value.Value);
    }

    public T OneOf<T>(string column) where T : struct, Enum =>
        Enum.TryParse<T>(this[column], ignoreCase: true, out var value)
            ? value
            : throw Refused(column, this[column], "write one of " + string.Join(", ", Enum.GetNames<T>()));

    public Source Source(string column = "source") => Sources.Of(this[column]);

    RefusedException Refused(string column, string value, string wanted) => new(Refusal.Of(column, value, wanted, line));
}
