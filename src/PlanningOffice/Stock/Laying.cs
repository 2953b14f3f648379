using System.Collections.Immutable;
using WitnessMark.PrintRoom;

namespace WitnessMark.PlanningOffice;

/// <summary>A blank's bounding rectangle on the sheet, mm from the sheet's bottom left.</summary>
public readonly record struct LaidPiece(double X, double Y, double Width, double Height);

/// <summary>Pieces laid on sheets of one size.</summary>
/// <param name="Sheets">How many to buy.</param>
/// <param name="OnOne">The places on a full sheet; the last sheet may carry fewer.</param>
/// <param name="Waste">Share of the bought area that is not piece, 0 to 1, by the pieces' true area.</param>
public sealed record Laying(StockSheet Sheet, int Sheets, ImmutableArray<LaidPiece> OnOne, double Waste)
{
    /// <summary>
    /// The size that takes the least metal for the quantity, then the fewest sheets. Pieces lie in straight rows, in at
    /// most two blocks of which one is turned a quarter turn, so that a bench shear can cut them; closer nesting of the
    /// true outlines may do better.
    /// </summary>
    /// <param name="width">Of the blank's bounding rectangle, mm.</param>
    /// <param name="area">Of one blank, mm².</param>
    /// <returns>Null when no size is large enough.</returns>
    public static Laying? Choose(double width, double height, double area, int quantity, StockList stock) =>
        stock.Sheets
            .Select(s => (Sheet: s, OnOne: Fullest(s, width, height, stock.Gap)))
            .Where(c => c.OnOne.Length > 0)
            .Select(c => (c.Sheet, c.OnOne, Count: (quantity + c.OnOne.Length - 1) / c.OnOne.Length))
            .OrderBy(c => c.Count * c.Sheet.Area).ThenBy(c => c.Count)
            .Select(c => new Laying(c.Sheet, c.Count, [.. c.OnOne.Take(quantity)], 1 - quantity * area / (c.Count * c.Sheet.Area)))
            .FirstOrDefault();

    /// <summary>How it is laid, as a picture of the sheet at full size.</summary>
    public Sheet Picture() => new($"{Sheet.Name} mm", Sheet.Width, Sheet.Height,
    [
        Rectangle(0, 0, Sheet.Width, Sheet.Height, Layers.Frame, Stroke.Thin),
        .. OnOne.Select(p => Rectangle(p.X, p.Y, p.Width, p.Height, Layers.Outline, Stroke.Outline)),
    ]);

    static PathMark Rectangle(double x, double y, double w, double h, string layer, Stroke stroke) =>
        new([new(x, y), new(x + w, y), new(x + w, y + h), new(x, y + h)], Closed: true, Filled: false, layer, stroke);

    /// <summary>Tries every split of the sheet into a straight block below and a turned block above, and the same with the sheet turned.</summary>
    static ImmutableArray<LaidPiece> Fullest(StockSheet sheet, double w, double h, double gap)
    {
        var upright = TwoBlocks(sheet.Width, sheet.Height, w, h, gap);
        var turned = TwoBlocks(sheet.Height, sheet.Width, w, h, gap);
        return turned.Length > upright.Length ? [.. turned.Select(p => new LaidPiece(p.Y, p.X, p.Height, p.Width))] : upright;
    }

    static ImmutableArray<LaidPiece> TwoBlocks(double width, double height, double w, double h, double gap)
    {
        ImmutableArray<LaidPiece> best = [];
        for (var rows = 0; rows <= Fit(height, h, gap); rows++)
        {
            var above = rows * (h + gap);
            var (columns, turnedColumns) = (Fit(width, w, gap), Fit(width, h, gap));
            var turnedRows = Fit(height - above, w, gap);
            if (rows * columns + turnedRows * turnedColumns <= best.Length) continue;
            best = [.. Block(0, rows, columns, w, h, gap), .. Block(above, turnedRows, turnedColumns, h, w, gap)];
        }
        return best;
    }

    static IEnumerable<LaidPiece> Block(double bottom, int rows, int columns, double w, double h, double gap) =>
        from row in Enumerable.Range(0, rows)
        from column in Enumerable.Range(0, columns)
        select new LaidPiece(column * (w + gap), bottom + row * (h + gap), w, h);

    /// <summary>A piece that fills the room exactly still fits: 1e-9 mm swallows the rounding of the sums.</summary>
    static int Fit(double room, double piece, double gap) => (int)Math.Max(0, Math.Floor((room + gap + 1e-9) / (piece + gap)));
}
