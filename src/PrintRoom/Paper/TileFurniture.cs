using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Paper;

/// <summary>What a page of a tiled drawing shows beside the drawing.</summary>
static class TileFurniture
{
    /// <summary>mm; the shortest window that holds a check line and the page's name beside it.</summary>
    public const double Room = 150;

    const double CheckLength = 100;
    const double CheckInset = 3;
    const double Tick = 4;
    const double Cross = 6;
    const double Words = 2.5;
    const double JoinWords = 2;
    const string CheckWords = "100 mm: measure both lines before cutting; print at 100 %";

    public static string Label(TileGrid grid, int column, int row) =>
        $"{TileGrid.Name(column, row)} of {TileGrid.Name(grid.Columns - 1, grid.Rows - 1)}";

    public static IEnumerable<Mark> Of(string title, TileGrid grid, int column, int row, IReadOnlySet<(int Column, int Row)> printed)
    {
        var corner = new Vec2(grid.Window.Left, grid.Window.Bottom);
        var level = corner.Y - Tiles.Strip + CheckInset;
        return
        [
            .. CheckLine(new(corner.X, level), 0, Words + 1),
            .. CheckLine(new(corner.X - Tiles.Strip + CheckInset, corner.Y), Math.PI / 2, -Words - Tick / 2 - 1),
            new TextMark(new(grid.Window.Right - 0.5, level + 2.5), Label(grid, column, row), 5, Layers.Check, Anchor.Right),
            new TextMark(new(grid.Window.Right - 0.5, level - 1.5), Cut(title, 24), Words, Layers.Check, Anchor.Right),
            .. grid.Pages > 1 ? Crosses(grid) : [],
            .. Joins(grid, column, row, printed),
        ];
    }

    static IEnumerable<Mark> CheckLine(Vec2 from, double turn, double offset)
    {
        Vec2 At(double along, double across) => from + new Vec2(along, across).Turned(turn);
        yield return Line(At(0, 0), At(CheckLength, 0));
        yield return Line(At(0, -Tick / 2), At(0, Tick / 2));
        yield return Line(At(CheckLength, -Tick / 2), At(CheckLength, Tick / 2));
        yield return new TextMark(At(CheckLength / 2, offset), CheckWords, Words, Layers.Check, Anchor.Middle, turn);
    }

    /// <summary>In the middle of each corner's overlap, where up to four pages show the same cross.</summary>
    static IEnumerable<Mark> Crosses(TileGrid grid)
    {
        var inner = grid.Window.Grown(-grid.Overlap / 2);
        foreach (var x in new[] { inner.Left, inner.Right })
            foreach (var y in new[] { inner.Bottom, inner.Top })
            {
                yield return Line(new(x - Cross / 2, y), new(x + Cross / 2, y));
                yield return Line(new(x, y - Cross / 2), new(x, y + Cross / 2));
                yield return new CircleMark(new(x, y), Cross / 4, Layers.Check, Stroke.Thin);
            }
    }

    static IEnumerable<Mark> Joins(TileGrid grid, int column, int row, IReadOnlySet<(int Column, int Row)> printed)
    {
        var window = grid.Window;
        var inner = window.Grown(-grid.Overlap / 2);
        (int Column, int Row, Vec2 From, Vec2 To)[] sides =
        [
            (column - 1, row, new(inner.Left, window.Top), new(inner.Left, window.Bottom)),
            (column + 1, row, new(inner.Right, window.Bottom), new(inner.Right, window.Top)),
            (column, row - 1, new(window.Right, inner.Top), new(window.Left, inner.Top)),
            (column, row + 1, new(window.Left, inner.Bottom), new(window.Right, inner.Bottom)),
        ];
        foreach (var (c, r, from, to) in sides.Where(s => printed.Contains((s.Column, s.Row))))
        {
            yield return new LineMark(from, to, Layers.Check, Stroke.Hidden, Tone.Quiet);
            // Outside the join, where the neighbour covers it; never upside down.
            var along = (to - from).Unit;
            var upsideDown = along.X < 0;
            var baseline = (from + to) / 2 - (upsideDown ? 0.5 : 0.5 + JoinWords) * along.Left;
            yield return new TextMark(baseline, $"joins {TileGrid.Name(c, r)}", JoinWords, Layers.Check, Anchor.Middle, upsideDown ? 0 : along.Angle, Tone.Quiet);
        }
    }

    static LineMark Line(Vec2 a, Vec2 b) => new(a, b, Layers.Check, Stroke.Thin);

    static string Cut(string text, int most) => text.Length <= most ? text : text[..(most - 1)] + "…";
}
