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
            .Select(s => (Sheet: s, Blocks: TwoBlocks.Fullest(s, width, height, stock.Gap)))
            .Where(c => c.Blocks.Count > 0)
            .Select(c => (c.Sheet, c.Blocks, Bought: (quantity + c.Blocks.Count - 1) / c.Blocks.Count))
            .OrderBy(c => c.Bought * c.Sheet.Area).ThenBy(c => c.Bought)
            .Select(c => new Laying(c.Sheet, c.Bought, [.. c.Blocks.Pieces().Take(quantity)], 1 - quantity * area / (c.Bought * c.Sheet.Area)))
            .FirstOrDefault();

    /// <summary>How it is laid, as a picture of the sheet at full size.</summary>
    public Sheet Picture() => new($"{Sheet.Name} mm", Sheet.Width, Sheet.Height,
    [
        Rectangle(0, 0, Sheet.Width, Sheet.Height, Layers.Frame, Stroke.Thin),
        .. OnOne.Select(p => Rectangle(p.X, p.Y, p.Width, p.Height, Layers.Outline, Stroke.Outline)),
    ]);

    static PathMark Rectangle(double x, double y, double w, double h, string layer, Stroke stroke) =>
        new([new(x, y), new(x + w, y), new(x + w, y + h), new(x, y + h)], Closed: true, Filled: false, layer, stroke);
}
