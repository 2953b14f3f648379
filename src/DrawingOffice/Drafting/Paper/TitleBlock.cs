using System.Globalization;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>The title block in the right bottom corner, 180 mm wide, with cautions over it.</summary>
static class TitleBlock
{
    public const double Width = 180;

    const double TitleRow = 15, Row = 11, NoteRow = 7, CautionLine = 5;

    public static double Height(TitleFields fields) => TitleRow + 2 * Row + NoteRow + CautionHeight(fields);

    /// <summary>Draws it into the right bottom corner of the frame.</summary>
    public static void Draw(Board board, Box inside, TitleFields fields, string scale, string units, int sheet, int of)
    {
        var (left, right, y) = (inside.Right - Width, inside.Right, inside.Bottom);
        Note(board, left, right, y, fields);
        y += NoteRow;
        Cells(board, left, y, Row, Letter.Usual,
            (62, "measured from", fields.MeasuredFrom), (48, "drawn by", fields.DrawnBy), (40, "date", Written(fields.Date)), (30, "sheet", $"{sheet} of {of}"));
        y += Row;
        Cells(board, left, y, Row, Letter.Usual,
            (62, "material", fields.Material), (48, "thickness", fields.Thickness), (22, "scale", scale), (18, "units", units), (30, "", ""));
        ProjectionSymbol.Draw(board, new(right - 15, y + Row / 2), 3, fields.Projection);
        y += Row;
        Cells(board, left, y, TitleRow, 5, (132, "title", fields.Title), (48, "part", fields.PartNumber));
        y += TitleRow;
        Cautions(board, new(left, y, right, y + CautionHeight(fields)), fields);
        board.Rectangle(new(left, inside.Bottom, right, y + CautionHeight(fields)), Layers.Frame, Stroke.Outline);
        board.Clear.Block(new(left, inside.Bottom, right, y + CautionHeight(fields)));
    }

    static string Written(DateOnly? date) => date?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "";

    static void Note(Board board, double left, double right, double y, TitleFields fields)
    {
        var text = (fields.GeneralTolerance.Length > 0 ? fields.GeneralTolerance + ". " : "") + (fields.Spreads ? "± holds 95 in 100. " : "") + (fields.ToBeMeasured ? "Drawn to be measured." : "Do not scale.");
        var room = right - left - 4;
        board.Text(new(left + 2, y + 2.2), Letter.Cut(text, room, Letter.Small), Letter.Small, Layers.Frame);
    }

    static void Cells(Board board, double left, double y, double height, double lettering, params ReadOnlySpan<(double Width, string Name, string Value)> cells)
    {
        board.Add(new LineMark(new(left, y), new(left + Width, y), Layers.Frame, Stroke.Thin));
        var x = left;
        foreach (var (width, name, value) in cells)
        {
            if (x > left) board.Add(new LineMark(new(x, y), new(x, y + height), Layers.Frame, Stroke.Thin));
            board.Text(new(x + 2, y + height - 1.5 - Letter.Small), name, Letter.Small, Layers.Frame, tone: Tone.Quiet);
            if (name.Length > 0) Value(board, x + 2, y, width - 4, lettering, value.Length > 0 ? value : "—");
            x += width;
        }
    }

    static void Value(Board board, double x, double y, double room, double lettering, string value)
    {
        var height = Letter.HeightFor(value, room, lettering);
        board.Text(new(x, y + 1.8), Letter.Cut(value, room, height), height, Layers.Frame);
    }

    static double CautionHeight(TitleFields fields) => CautionLines(fields).Count is var n && n > 0 ? n * CautionLine + 3 : 0;

    static List<string> CautionLines(TitleFields fields) =>
        [.. fields.Cautions.SelectMany(c => Letter.Lines(c, Width - 6, Letter.Usual))];

    static void Cautions(Board board, Box box, TitleFields fields)
    {
        var lines = CautionLines(fields);
        if (lines.Count == 0) return;
        board.Add(new LineMark(new(box.Left, box.Bottom), new(box.Right, box.Bottom), Layers.Frame, Stroke.Outline));
        for (var i = 0; i < lines.Count; i++)
            board.Text(new(box.Left + 3, box.Top - 1.2 - CautionLine * (i + 1) + 1), lines[i], Letter.Usual, Layers.Frame, tone: Tone.Warn);
    }
}
