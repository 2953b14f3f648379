using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Dimensions;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Paper;

namespace WitnessMark.DrawingOffice.Drafting.Forms;

/// <summary>A line of a length that is known, to see by whether the printer kept the scale.</summary>
/// <param name="Length">mm.</param>
public sealed record CheckLine(string Words, double Length, bool Up);

/// <summary>A plate to be drawn at true size without a single figure: whoever measures it has only the paper to go by.</summary>
/// <param name="Corners">In order round the outline, with their names.</param>
/// <param name="Edges">Names of the edges, the first from the first corner to the second.</param>
public sealed record PlateFields(ImmutableArray<(string Id, Vec2 At)> Corners, ImmutableArray<string> Edges, ImmutableArray<RoundHole> Holes)
{
    public ImmutableArray<CheckLine> Checks { get; init; } = [];

    /// <summary>Sentences over the drawing.</summary>
    public ImmutableArray<string> Words { get; init; } = [];
}

/// <summary>
/// The plate at 1:1 in a drawing's frame, on A4 or Letter. Every line that is measured is drawn with the narrow pen: from the middle of
/// one line to the middle of another there is then no doubt of more than a tenth of a millimetre.
/// </summary>
public static class PlateSheet
{
    const double Pen = 0.18, LinePitch = 5.2, Tick = 2.5;

    public static PrintRoom.Sheet Draw(PlateFields plate, PaperSize paper, TitleFields title)
    {
        var board = new Board();
        Frame.Draw(board, paper);
        var inside = Frame.Inside(paper);
        TitleBlock.Draw(board, inside, title with { Spreads = false, ToBeMeasured = true }, "1:1", "mm", 1, 1);
        var y = inside.Top - 10;
        foreach (var line in plate.Words.SelectMany(w => Letter.Lines(w, inside.Width - 12, Letter.Usual)))
        {
            board.Text(new(inside.Left + 6, y), line, Letter.Usual, Layers.Frame);
            y -= LinePitch;
        }
        y -= 8;
        foreach (var check in plate.Checks.Where(c => !c.Up))
        {
            Check(board, new(inside.Left + 46, y), new(1, 0), check);
            y -= 12;
        }
        var foot = y - 12 - plate.Checks.Where(c => c.Up).Select(c => c.Length).DefaultIfEmpty(0).Max();
        var x = inside.Left + 10;
        foreach (var check in plate.Checks.Where(c => c.Up))
        {
            Check(board, new(x, foot), new(0, 1), check);
            x += 11;
        }
        Plate(board, plate, new(inside.Left + 43, foot));
        return new(title.Title, paper.Width, paper.Height, board.Marks);
    }

    static void Plate(Board board, PlateFields plate, Vec2 origin)
    {
        ImmutableArray<Vec2> outline = [.. plate.Corners.Select(c => origin + c.At)];
        board.Add(new PathMark(outline, true, false, Layers.Outline, Stroke.Outline) { PenWidth = Pen });
        board.Clear.Chain(outline, closed: true);
        foreach (var hole in plate.Holes)
        {
            var (centre, radius) = (origin + hole.Centre, hole.Diameter.Value / 2);
            board.Circle(centre, radius, Layers.Holes, Stroke.Thin);
            foreach (var way in new Vec2[] { new(1, 0), new(0, 1) })
                board.Line(centre - way * (radius + PartShape.Past), centre + way * (radius + PartShape.Past), Layers.Centre, Stroke.Centre);
        }
        foreach (var hole in plate.Holes) Leader.Led(board, origin + hole.Centre, hole.Diameter.Value / 2, new(hole.Id), Leader.EveryWay);
        var middle = outline.Aggregate(Vec2.Zero, (a, b) => a + b) * (1.0 / outline.Length);
        for (var i = 0; i < outline.Length; i++)
        {
            Leader.Led(board, outline[i], 0.6, new(plate.Corners[i].Id), Leader.Along((outline[i] - middle).Angle));
            var (a, b) = (outline[i], outline[(i + 1) % outline.Length]);
            var name = plate.Edges[i];
            // Outside the plate, clear of its line.
            var at = (a + b) / 2 - (b - a).Unit.Left * 5;
            board.Text(at - new Vec2(0, Letter.Usual / 2), name, Letter.Usual, Layers.Text, Anchor.Middle);
        }
    }

    static void Check(Board board, Vec2 from, Vec2 along, CheckLine check)
    {
        var (to, tick) = (from + along * check.Length, along.Left * Tick);
        foreach (var (a, b) in new[] { (from, to), (from - tick, from + tick), (to - tick, to + tick) })
        {
            board.Add(new PathMark([a, b], false, false, Layers.Check, Stroke.Thin) { PenWidth = Pen });
            board.Clear.Line(a, b);
        }
        board.Text((from + to) / 2 + along.Left * 1.8, check.Words, Letter.Small, Layers.Check, Anchor.Middle, along.Angle);
    }
}
