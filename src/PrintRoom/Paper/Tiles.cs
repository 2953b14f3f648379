using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Paper;

/// <summary>
/// A drawing at 1:1 spread over pages of common paper, to be pasted together. Every page carries its name, a 100 mm line in both
/// directions to be measured before anything is cut, crosses where its corners meet its neighbours', and lines to join on.
/// </summary>
public static class Tiles
{
    /// <summary>mm beside and below the drawing, kept for check lines and names.</summary>
    internal const double Strip = 12;

    const double SmallestOverlap = 6;
    const int MostPages = 200;
    const int MostRows = 26;

    /// <summary>
    /// Pages from the top left, row by row. Paper is turned whichever way takes fewer; a page with nothing on it is left out.
    /// </summary>
    /// <param name="overlap">What neighbours both show, mm: from 6 to a quarter of the paper's width.</param>
    /// <param name="margin">What the printer cannot reach, mm.</param>
    /// <exception cref="RefusedException">An overlap or margin that does not fit the paper, a mark that is no number, or more than 200 pages.</exception>
    public static IReadOnlyList<Sheet> Split(Sheet sheet, PaperSize paper, double overlap = 10, double margin = 10)
    {
        Guard.Check(sheet);
        Check(paper, overlap, margin);
        var area = Covered(sheet);
        var (upright, turned) = (Grid(paper, area, overlap, margin), Grid(paper.Turned, area, overlap, margin));
        var grid = turned.Pages < upright.Pages ? turned : upright;
        if (grid.Pages > MostPages || grid.Rows > MostRows)
            throw new RefusedException(Refusal.Of($"sheet {sheet.Title}", $"{Figures.Of(area.Width, 0)} x {Figures.Of(area.Height, 0)} mm",
                $"it would take {grid.Pages} pages of {paper.Name}; at most {MostPages} in {MostRows} rows: take larger paper"));
        return Pages(sheet, grid);
    }

    static List<Sheet> Pages(Sheet sheet, TileGrid grid)
    {
        var places =
            from row in Enumerable.Range(0, grid.Rows)
            from column in Enumerable.Range(0, grid.Columns)
            let marks = Shown(sheet, grid, column, row)
            where marks.Length > 0 || grid.Pages == 1
            select (column, row, marks);
        var kept = places.ToList();
        var printed = kept.Select(p => (p.column, p.row)).ToHashSet();
        return [.. kept.Select(p => new Sheet(
            $"{sheet.Title} {TileFurniture.Label(grid, p.column, p.row)}", grid.Paper.Width, grid.Paper.Height,
            [.. p.marks, .. TileFurniture.Of(sheet.Title, grid, p.column, p.row, printed)]))];
    }

    static ImmutableArray<Mark> Shown(Sheet sheet, TileGrid grid, int column, int row)
    {
        var view = grid.View(column, row);
        var shift = new Vec2(grid.Window.Left - view.Left, grid.Window.Bottom - view.Bottom);
        return [.. sheet.Marks.SelectMany(m => Clip.To(m, view)).Select(m => Move.By(m, shift))];
    }

    static TileGrid Grid(PaperSize paper, Box area, double overlap, double margin) =>
        new(paper, area, new(margin + Strip, margin + Strip, paper.Width - margin, paper.Height - margin), overlap);

    /// <summary>Everything drawn, with half the widest line; the sheet itself when nothing is.</summary>
    static Box Covered(Sheet sheet)
    {
        var boxes = sheet.Marks.Select(Box.Of).OfType<Box>().ToList();
        return boxes.Count == 0 ? new(0, 0, sheet.Width, sheet.Height) : boxes.Aggregate((a, b) => a.With(b)).Grown(Pens.Wide);
    }

    static void Check(PaperSize paper, double overlap, double margin)
    {
        var side = Math.Min(paper.Width, paper.Height);
        var most = side / 4;
        if (!(overlap >= SmallestOverlap && overlap <= most))
            throw new RefusedException(Refusal.Of("overlap", $"{Figures.Of(overlap, 2)} mm", $"it must be from {SmallestOverlap} to {Figures.Of(most, 1)} mm on {paper.Name}"));
        // The window must hold the check line, its words and the page's name.
        var widest = (side - Strip - TileFurniture.Room) / 2;
        if (!(margin >= 0 && margin <= widest))
            throw new RefusedException(Refusal.Of("margin", $"{Figures.Of(margin, 2)} mm", $"it must be from 0 to {Figures.Of(widest, 1)} mm on {paper.Name}"));
    }
}
