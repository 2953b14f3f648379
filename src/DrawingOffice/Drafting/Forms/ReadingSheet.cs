using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Forms;

/// <summary>A feature already known when the sheet is printed. Columns as in the CSV.</summary>
public sealed record FeatureRow(string Id, string Kind, string From = "", string To = "", string X = "", string Y = "");

/// <summary>A reading to be taken, or taken already. Columns as in the CSV.</summary>
public sealed record ReadingRow(string Kind, string From, string To = "", string Value = "", string Instrument = "", string Note = "");

/// <summary>What is printed on a reading sheet before it goes to the part. All may be empty.</summary>
public sealed record ReadingSheetFields(string Sample = "", string Title = "")
{
    public ImmutableArray<FeatureRow> Features { get; init; } = [];

    public ImmutableArray<ReadingRow> Readings { get; init; } = [];

    /// <summary>The words that may stand under "kind", printed at the foot; the reader of the CSV knows them.</summary>
    public ImmutableArray<string> Kinds { get; init; } = [];
}

/// <summary>
/// The reading sheet to fill in by hand, upright A4: first a squared sketch with the features, then the readings.
/// It reads row by row like the CSV, so what was pencilled in the cold is typed in the warm without thinking.
/// </summary>
public static class ReadingSheet
{
    const double Pitch = 7.5, Square = 5;

    const int SquaresDown = 26;

    public static ImmutableArray<PrintRoom.Sheet> Draw(ReadingSheetFields fields)
    {
        var (first, more) = Features(fields).Cut(FeatureTop - Room.Bottom);
        var tables = more.Split(ReadingRoom(fields)).Concat(Readings(fields).Split(ReadingRoom(fields))).ToList();
        var of = tables.Count + 1;
        var board = new Board();
        Head(board, fields, 1, of);
        Sketch(board);
        first.Draw(board, new(Room.Left, FeatureTop));
        var sheets = ImmutableArray.CreateBuilder<PrintRoom.Sheet>();
        sheets.Add(Finished(board, fields, 1));
        for (var i = 0; i < tables.Count; i++)
        {
            var next = new Board();
            Head(next, fields, i + 2, of);
            tables[i].Draw(next, new(Room.Left, Top));
            Foot(next, fields);
            sheets.Add(Finished(next, fields, i + 2));
        }
        return sheets.ToImmutable();
    }

    static readonly PaperSize Paper = PaperSize.A4;

    static Box Room => Frame.Inside(Paper).Grown(-6);

    const double HeadHeight = 26;

    static double Top => Room.Top - HeadHeight;

    static double FeatureTop => Top - 8 - SquaresDown * Square - 6;

    static double ReadingRoom(ReadingSheetFields fields) => Top - Room.Bottom - FootLines(fields).Count * 4.5 - 4;

    static void Sketch(Board board)
    {
        board.Text(new(Room.Left, Top - 4.5), "Sketch, squares of 5 mm: name every corner, hole and edge", Letter.Usual);
        var across = (int)(Room.Width / Square);
        Squared(board, new(Room.Left, Top - 8 - SquaresDown * Square, Room.Left + across * Square, Top - 8));
    }

    static Table Features(ReadingSheetFields fields)
    {
        ImmutableArray<ImmutableArray<string>> rows = [.. fields.Features.Select(f => (ImmutableArray<string>)[f.Id, f.Kind, f.From, f.To, f.X, f.Y])];
        var fit = (int)((FeatureTop - Room.Bottom - 7) / Pitch) - 1;
        return new("Features", FeatureColumns, [.. rows, .. Blank(Math.Max(0, fit - rows.Length), 6)], Pitch);
    }

    static readonly ImmutableArray<Column> FeatureColumns =
        [new("id", Least: 18), new("kind", Least: 46), new("from", Least: 24), new("to", Least: 24), new("x", Least: 28), new("y", Least: 28)];

    static Table Readings(ReadingSheetFields fields)
    {
        ImmutableArray<Column> columns =
        [
            new("kind", Least: 41), new("from", Least: 16), new("to", Least: 16), new("value as written", Least: 34), new("instrument", Least: 28), new("note", Least: 33),
        ];
        ImmutableArray<ImmutableArray<string>> rows = [.. fields.Readings.Select(r => (ImmutableArray<string>)[r.Kind, r.From, r.To, r.Value, r.Instrument, r.Note])];
        var fit = (int)((ReadingRoom(fields) - 7 - Pitch) / Pitch);
        var rest = (fit - rows.Length % fit) % fit;
        return new("Readings, one to a line, as the instrument shows them", columns, [.. rows, .. Blank(rows.Length == 0 ? fit : rest, 6)], Pitch);
    }

    static IEnumerable<ImmutableArray<string>> Blank(int rows, int columns) =>
        Enumerable.Repeat(ImmutableArray.CreateRange(Enumerable.Repeat("", columns)), rows);

    static void Squared(Board board, Box box)
    {
        for (var i = 0; box.Left + i * Square <= box.Right + 1e-6; i++) Rule(new(box.Left + i * Square, box.Bottom), new(box.Left + i * Square, box.Top), i);
        for (var i = 0; box.Bottom + i * Square <= box.Top + 1e-6; i++) Rule(new(box.Left, box.Bottom + i * Square), new(box.Right, box.Bottom + i * Square), i);

        // Every tenth line is a heavy one: 50 mm, easily counted.
        void Rule(Vec2 a, Vec2 b, int i) => board.Add(new PathMark([a, b], false, false, Layers.Frame, Stroke.Thin, Tone.Quiet) { PenWidth = i % 10 == 0 ? 0.25 : 0.1 });
    }

    static void Head(Board board, ReadingSheetFields fields, int sheet, int of)
    {
        board.Rectangle(Frame.Inside(Paper), Layers.Frame, Stroke.Outline);
        board.Text(new(Room.Left, Room.Top - 5), "Reading sheet", 5);
        board.Text(new(Room.Right, Room.Top - 5), string.Create(CultureInfo.InvariantCulture, $"{sheet} of {of}"), Letter.Usual, anchor: Anchor.Right);
        Line(Room.Left, Room.Left + 48, "sample", fields.Sample);
        Line(Room.Left + 52, Room.Left + 116, "part", fields.Title);
        Line(Room.Left + 120, Room.Right, "date, taken by", "");

        void Line(double from, double to, string name, string value)
        {
            var y = Room.Top - 17;
            board.Text(new(from, y - 4), name, Letter.Small, tone: Tone.Quiet);
            board.Text(new(from, y + 1.9), Letter.Cut(value, to - from, Letter.Usual), Letter.Usual);
            board.Line(new(from, y), new(to, y), Layers.Frame, Stroke.Thin);
        }
    }

    static List<string> FootLines(ReadingSheetFields fields)
    {
        var width = Room.Width;
        var kinds = fields.Kinds.IsDefaultOrEmpty ? [] : Letter.Lines("Kinds: " + string.Join(", ", fields.Kinds) + ".", width, Letter.Small);
        return [.. kinds, .. Letter.Lines("Write the unit where it is not mm: 3 5/16 in, 64 thou, 14 SWG, 5° 30′. Repeat a doubtful reading on a line of its own; never rub one out.", width, Letter.Small)];
    }

    static void Foot(Board board, ReadingSheetFields fields)
    {
        var lines = FootLines(fields);
        for (var i = 0; i < lines.Count; i++)
            board.Text(new(Room.Left, Room.Bottom + (lines.Count - 1 - i) * 4.5), lines[i], Letter.Small, tone: Tone.Quiet);
    }

    static PrintRoom.Sheet Finished(Board board, ReadingSheetFields fields, int sheet) =>
        new($"Reading sheet {fields.Sample} {sheet}".Replace("  ", " ", StringComparison.Ordinal), Paper.Width, Paper.Height, board.Marks);
}
