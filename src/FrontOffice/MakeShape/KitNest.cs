using WitnessMark.DrawingOffice.Pieces.Nesting;

namespace WitnessMark.FrontOffice.MakeShape;

/// <summary>A kit's pieces laid on the sheets that the shop can buy.</summary>
public static class KitNest
{
    /// <exception cref="Maths.RefusedException">Too many pieces.</exception>
    public static NestPlan Of(KitRequest request, NestOptions? options = null, CancellationToken stop = default) =>
        Nest.Of([.. request.Kit.Pieces.Where(p => !p.Paper)], [.. request.Shop.Stock.Sheets.Select(s => new StockSize(s.Name, s.Width, s.Height))],
            options ?? new(request.Shop.Stock.Gap) { Grain = request.Grain }, request.Quantity, stop);
}
