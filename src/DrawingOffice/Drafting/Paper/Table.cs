using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>A column of a table. Numbers stand to the right so that their decimals come under one another.</summary>
/// <param name="Least">Least width, mm, for what is written in by hand.</param>
sealed record Column(string Heading, Anchor Anchor = Anchor.Left, double Least = 0);

/// <summary>A ruled table; its columns are as wide as what stands in them.</summary>
/// <param name="Pitch">Row height, mm.</param>
sealed record Table(string Title, ImmutableArray<Column> Columns, ImmutableArray<ImmutableArray<string>> Rows, double Pitch = 5.5)
{
    const double Side = 1.5, TitleHeight = 7;

    readonly ImmutableArray<double> _widths =
    [
        .. Columns.Select((c, i) => Math.Max(c.Least, 2 * Side + Rows.Select(r => r[i]).Append(c.Heading).Max(t => Letter.Width(t, Letter.Small)))),
    ];

    public double Width => Math.Max(_widths.Sum(), Letter.Width(Title, Letter.Usual) + 2 * Side);

    /// <summary>Without headings it is a plain list, without rules.</summary>
    bool Ruled => Columns.Any(c => c.Heading.Length > 0);

    double Headed => (Title.Length > 0 ? TitleHeight : 0) + (Ruled ? Pitch : 0);

    public double Height => Headed + Rows.Length * Pitch;

    /// <summary>The table in pieces no higher than the room; each repeats the heading.</summary>
    public IEnumerable<Table> Split(double room)
    {
        var fit = Math.Max(1, (int)((room - Headed) / Pitch));
        for (var i = 0; i < Rows.Length; i += fit)
        {
            var title = i > 0 && Title.Length > 0 ? Title + " (continued)" : Title;
            yield return new(title, Columns, [.. Rows.Skip(i).Take(fit)], Pitch);
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
        if (!Ruled)
        {
            for (var i = 0; i < Rows.Length; i++) Row(board, left, y - i * Pitch, Rows[i], Tone.Ink);
            return;
        }
        var top = y;
        Rule(board, left, right, y, Stroke.Outline);
        Row(board, left, y, [.. Columns.Select(c => c.Heading)], Tone.Quiet);
        y -= Pitch;
        Rule(board, left, right, y, Stroke.Outline);
        foreach (var row in Rows)
        {
            Row(board, left, y, row, Tone.Ink);
            y -= Pitch;
            Rule(board, left, right, y, Stroke.Thin);
        }
        var x = left;
        foreach (var width in _widths.Prepend(0))
        {
            x += width;
            board.Add(new LineMark(new(x, top), new(x, y), Layers.Frame, Stroke.Thin, Tone.Quiet));
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
            board.Text(new(at, top - Pitch / 2 - Letter.Small / 2), cells[i], Letter.Small, Layers.Text, Columns[i].Anchor, tone: tone);
            x += _widths[i];
        }
    }
}
