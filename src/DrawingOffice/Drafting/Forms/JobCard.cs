using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Forms;

/// <summary>One step of a job.</summary>
/// <param name="Low">Hours at best.</param>
/// <param name="Likely">Hours as a rule.</param>
/// <param name="High">Hours at worst.</param>
/// <param name="SentOut">The shop cannot do it: it goes to someone who can.</param>
public sealed record CardStep(string What, string Tools, double? Low = null, double? Likely = null, double? High = null, bool SentOut = false);

/// <summary>Stock to buy or to take from the rack, in plain words.</summary>
public sealed record CardStock(string What, string Size, string Quantity, string Cost = "");

/// <summary>What a job card says; the planning office fills it.</summary>
public sealed record CardFields(string Job, string Part, string PartNumber)
{
    public DateOnly? Date { get; init; }

    public string Drawing { get; init; } = "";

    public string Cost { get; init; } = "";

    public ImmutableArray<CardStep> Steps { get; init; } = [];

    public ImmutableArray<CardStock> Stock { get; init; } = [];

    /// <summary>Printed first and in the warning tone.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];
}

/// <summary>The job card, upright A4: cautions, stock, then the steps with boxes for the hours they really took.</summary>
public static class JobCard
{
    const double Air = 6, HeadHeight = 34, CautionPitch = 5.2;

    /// <summary>Widest words in a table cell, mm; longer ones run on in the next line.</summary>
    const double StepWords = 64, ToolWords = 38, StockWords = 72;

    static readonly PaperSize Paper = PaperSize.A4;

    static Box Room => Frame.Inside(Paper).Grown(-Air);

    public static ImmutableArray<PrintRoom.Sheet> Draw(CardFields card)
    {
        var tables = new[] { Stock(card), Steps(card) }.Where(t => t.Rows.Length > 0).ToList();
        var pages = new List<List<(Table Table, double Top)>> { new() };
        var y = Room.Top - HeadHeight - CautionHeight(card);
        foreach (var table in tables)
        {
            var rest = table;
            while (rest.Rows.Length > 0)
            {
                var (now, later) = rest.Cut(y - Room.Bottom);
                if (now.Rows.Length > 0) pages[^1].Add((now, y));
                y -= now.Height + Air;
                rest = later;
                if (rest.Rows.Length == 0) break;
                pages.Add([]);
                y = Room.Top - HeadHeight;
            }
        }
        return [.. pages.Select((page, i) => Page(card, page, i + 1, pages.Count))];
    }

    static PrintRoom.Sheet Page(CardFields card, List<(Table Table, double Top)> tables, int sheet, int of)
    {
        var board = new Board();
        board.Rectangle(Frame.Inside(Paper), Layers.Frame, Stroke.Outline);
        Head(board, card, sheet, of);
        if (sheet == 1) Cautions(board, card);
        foreach (var (table, top) in tables) table.Draw(board, new(Room.Left, top));
        if (sheet == of) Notes(board, tables.Count > 0 ? tables[^1].Top - tables[^1].Table.Height - 2 * Air : Room.Top - HeadHeight - CautionHeight(card));
        return new($"Job card {card.Job}, sheet {sheet}", Paper.Width, Paper.Height, board.Marks);
    }

    /// <summary>Lines to write on, down to the foot, when there is room for three.</summary>
    static void Notes(Board board, double top)
    {
        const double Line = 8;
        if (top - Room.Bottom < 3 * Line) return;
        board.Text(new(Room.Left, top - Letter.Usual), "Notes", Letter.Usual);
        for (var y = top - 2 * Line; y >= Room.Bottom; y -= Line)
            board.Add(new LineMark(new(Room.Left, y), new(Room.Right, y), Layers.Frame, Stroke.Thin, Tone.Quiet));
    }

    static void Head(Board board, CardFields card, int sheet, int of)
    {
        var (left, right, top) = (Room.Left, Room.Right, Room.Top);
        board.Text(new(left, top - 4), "Job card", Letter.Usual, tone: Tone.Quiet);
        board.Text(new(right, top - 4), string.Create(CultureInfo.InvariantCulture, $"sheet {sheet} of {of}"), Letter.Usual, anchor: Anchor.Right, tone: Tone.Quiet);
        var height = Letter.HeightFor(card.Job, right - left, 7);
        board.Text(new(left, top - 14.5), Letter.Cut(card.Job, right - left, height), height);
        board.Line(new(left, top - 18), new(right, top - 18), Layers.Frame, Stroke.Outline);
        var x = left;
        foreach (var (name, value, width) in new[]
        {
            ("part", $"{card.PartNumber}  {card.Part}", 74.0), ("drawing", card.Drawing, 36), ("date", card.Date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "", 28), ("cost", card.Cost, 30),
        })
        {
            board.Text(new(x, top - 22), name, Letter.Small, tone: Tone.Quiet);
            var lettering = Letter.HeightFor(value, width - 3, Letter.Usual);
            board.Text(new(x, top - 27.5), Letter.Cut(value.Trim(), width - 3, lettering), lettering);
            x += width;
        }
    }

    static List<string> CautionLines(CardFields card) => [.. card.Cautions.SelectMany(c => Letter.Lines(c, Room.Width - 12, Letter.Usual).Select((l, i) => i == 0 ? "– " + l : "   " + l))];

    static double CautionHeight(CardFields card) => CautionLines(card).Count is var n and > 0 ? n * CautionPitch + 12 + Air : 0;

    static void Cautions(Board board, CardFields card)
    {
        var lines = CautionLines(card);
        if (lines.Count == 0) return;
        var top = Room.Top - HeadHeight;
        board.Rectangle(new(Room.Left, top - lines.Count * CautionPitch - 11, Room.Right, top), Layers.Frame, Stroke.Outline, Tone.Warn);
        board.Text(new(Room.Left + 3, top - 6), "Take care", Letter.Usual, tone: Tone.Warn);
        for (var i = 0; i < lines.Count; i++)
            board.Text(new(Room.Left + 3, top - 6 - (i + 1) * CautionPitch - 0.5), lines[i], Letter.Usual, tone: Tone.Warn);
    }

    static Table Stock(CardFields card) => new(
        "Stock",
        [new("what", Least: StockWords), new("size", Least: 42), new("quantity", Least: 22), new("cost", Anchor.Right, 22), new("have", Least: 10)],
        [.. card.Stock.Select(s => Row((s.What, StockWords - 3), (s.Size, 40), (s.Quantity, 20), (s.Cost, 20), ("", 8)))]);

    static Table Steps(CardFields card)
    {
        var rows = card.Steps.Select((s, i) => Row(
            ($"{i + 1}", 8), (s.SentOut ? $"{s.What} (send out)" : s.What, StepWords - 3), (s.Tools, ToolWords - 3), (Hours(s), 30), ("", 14), ("", 8)));
        var hours = card.Steps.All(s => s.Likely is not null) && card.Steps.Length > 0
            ? [["", "in all", "", Hours(new("", "", card.Steps.Sum(s => s.Low ?? s.Likely), card.Steps.Sum(s => s.Likely), card.Steps.Sum(s => s.High ?? s.Likely))), "", ""]]
            : ImmutableArray<ImmutableArray<string>>.Empty;
        return new(
            "Steps",
            [new("", Anchor.Right, 8), new("step", Least: StepWords), new("tools", Least: ToolWords), new("hours", Anchor.Right, 30), new("took", Least: 16), new("done", Least: 12)],
            [.. rows, .. hours], 6);
    }

    /// <summary>Low, likely, high.</summary>
    static string Hours(CardStep s) => s.Likely is not { } likely ? "" : s.Low is { } low && s.High is { } high
        ? string.Create(CultureInfo.InvariantCulture, $"{low:0.##} / {likely:0.##} / {high:0.##}")
        : likely.ToString("0.##", CultureInfo.InvariantCulture);

    static ImmutableArray<string> Row(params ReadOnlySpan<(string Text, double Width)> cells)
    {
        var row = ImmutableArray.CreateBuilder<string>(cells.Length);
        foreach (var (text, width) in cells) row.Add(string.Join('\n', Letter.Lines(text, width, Letter.Small)));
        return row.ToImmutable();
    }
}
