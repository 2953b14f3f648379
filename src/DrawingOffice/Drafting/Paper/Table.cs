using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>A column of a table. Numbers stand to the right so that their decimals come under one another.</summary>
/// <param name="Heading">Empty in every column: the table is a plain list, without rules.</param>
/// <param name="Least">Least width, mm, for what is written in by hand.</param>
sealed record Column(string Heading, Anchor Anchor = Anchor.Left, double Least = 0);

/// <summary>A ruled table; its columns are as wide as what stands in them. A cell may hold several lines.</summary>
/// <param name="Pitch">Height of a row of one line, mm.</param>
sealed record Table(string Title, ImmutableArray<Column> Columns, ImmutableArray<ImmutableArray<string>> Rows, double Pitch = 5.5)
{
    const double Side = 1.5, TitleHeight = 7, LinePitch = 3.9;

    /// <summary>Stands where a figure is not known.</summary>
    public const string Unknown = "—";

    readonly ImmutableArray<double> _widths =
    [
        .. Columns.Select((c, i) => Math.Max(c.Least, 2 * Side + Rows.SelectMany(r => Lines(r[i])).Append(c.Heading).Max(t => Letter.Width(t, Letter.Small)))),
    ];

    public double Width => Math.Max(_widths.Sum(), Letter.Width(Title, Letter.Usual) + 2 * Side);

    public double Height => Headed + Rows.Sum(HeightOf);

    bool Ruled => Columns.Any(c => c.Heading.Length > 0);

    double Headed => (Title.Length > 0 ? TitleHeight : 0) + (Ruled ? Pitch : 0);

    /// <summary>The same without the columns in which every row only has a dash.</summary>
    public Table WithoutEmpty()
    {
        int[] kept = [.. Enumerable.Range(0, Columns.Length).Where(i => Rows.Any(r => r[i] != Unknown))];
        return new(Title, [.. kept.Select(i => Columns[i])], [.. Rows.Select(r => (ImmutableArray<string>)[.. kept.Select(i => r[i])])], Pitch);
    }

    /// <summary>As many rows as the room takes (none when not even the heading fits), and the rest under the same heading.</summary>
    /// <param name="room">Height, mm.</param>
    public (Table Now, Table Later) Cut(double room)
    {
        var (fit, left) = (0, room - Headed);
        while (fit < Rows.Length && left >= HeightOf(Rows[fit])) left -= HeightOf(Rows[fit++]);
        var again = fit == 0 || Title.Length == 0 || Title.EndsWith(Again, StringComparison.Ordinal) ? Title : Title + Again;
        return (new(Title, Columns, Rows[..fit], Pitch), new(again, Columns, Rows[fit..], Pitch));
    }

    const string Again = " (continued)";

    /// <summary>The table in pieces no higher than the room; each repeats the heading.</summary>
    public IEnumerable<Table> Split(double room)
    {
        var rest = this;
        while (rest.Rows.Length > 0)
        {
            // A room too low for one row still takes one: better over the edge than for ever.
            var (now, later) = rest.Cut(Math.Max(room, Headed + HeightOf(rest.Rows[0])));
            yield return now;
            rest = later;
        }
    }

    public void Draw(Board board, Vec2 leftTop)
    {
        var (left, right, y) = (leftTop.X, leftTop.X + _widths.Sum(), leftTop.Y);
        if (Title.Length > 0)
        {
            board.Text(new(left, y - 1 - Letter.Usual), Title, Letter.Usual);
            y -= TitleHeight;
        }
        var top = y;
        if (Ruled)
        {
            Rule(board, left, right, y, Stroke.Outline);
            Row(board, left, y, [.. Columns.Select(c => c.Heading)], Tone.Quiet);
            y -= Pitch;
            Rule(board, left, right, y, Stroke.Outline);
        }
        foreach (var row in Rows)
        {
            Row(board, left, y, row, Tone.Ink);
            y -= HeightOf(row);
            if (Ruled) Rule(board, left, right, y, Stroke.Thin);
        }
        if (Ruled) Uprights(board, left, top, y);
    }

    void Uprights(Board board, double left, double top, double bottom)
    {
        var x = left;
        foreach (var width in _widths.Prepend(0))
        {
            x += width;
            board.Add(new LineMark(new(x, top), new(x, bottom), Layers.Frame, Stroke.Thin, Tone.Quiet));
        }
    }

    static void Rule(Board board, double left, double right, double y, Stroke stroke) =>
        board.Add(new LineMark(new(left, y), new(right, y), Layers.Frame, stroke, stroke == Stroke.Thin ? Tone.Quiet : Tone.Ink));

    void Row(Board board, double left, double top, ImmutableArray<string> cells, Tone tone)
    {
        var x = left;
        for (var i = 0; i < cells.Length; i++)
        {
            var at = Columns[i].Anchor switch
            {
                Anchor.Left => x + Side,
                Anchor.Middle => x + _widths[i] / 2,
                _ => x + _widths[i] - Side,
            };
            var y = top - Pitch / 2 - Letter.Small / 2;
            foreach (var line in Lines(cells[i]))
            {
                board.Text(new(at, y), line, Letter.Small, Layers.Text, Columns[i].Anchor, tone: tone);
                y -= LinePitch;
            }
            x += _widths[i];
        }
    }

    double HeightOf(ImmutableArray<string> row) => Pitch + (row.Max(c => Lines(c).Length) - 1) * LinePitch;

    static string[] Lines(string cell) => cell.Split('\n');
}
