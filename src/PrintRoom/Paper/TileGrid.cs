using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Paper;

/// <summary>How an area is shared among pages of one size, mm. Row 0 is the top one.</summary>
/// <param name="Area">What must be covered, on the sheet.</param>
/// <param name="Window">Where a page takes the drawing, on the page.</param>
/// <param name="Overlap">What neighbouring pages both show.</param>
sealed record TileGrid(PaperSize Paper, Box Area, Box Window, double Overlap)
{
    public int Columns => Count(Area.Width, StepX);

    public int Rows => Count(Area.Height, StepY);

    public int Pages => Columns * Rows;

    double StepX => Window.Width - Overlap;

    double StepY => Window.Height - Overlap;

    /// <summary>The pages' bottom left corner on the sheet; what the last pages have to spare is shared between both sides.</summary>
    Vec2 Origin => new(
        Area.Left - (Columns * StepX + Overlap - Area.Width) / 2,
        Area.Bottom - (Rows * StepY + Overlap - Area.Height) / 2);

    /// <summary>What a page shows of the sheet.</summary>
    public Box View(int column, int row)
    {
        var corner = Origin + new Vec2(column * StepX, (Rows - 1 - row) * StepY);
        return new(corner.X, corner.Y, corner.X + Window.Width, corner.Y + Window.Height);
    }

    public static string Name(int column, int row) => (char)('A' + row) + (column + 1).ToString(CultureInfo.InvariantCulture);

    int Count(double length, double step) => Math.Max(1, (int)Math.Min(Math.Ceiling((length - Overlap) / step - 1e-9), 10_000));
}
