using WitnessMark.DrawingOffice.Transitions;
using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.FrontOffice.Printing;

namespace WitnessMark.FrontOffice.DevelopTransition;

/// <summary>Every file of a laid-out shape. What is printed on paper is drawn at 1:1 like a piece, but no sheet is bought for it.</summary>
public static class TransitionFiles
{
    /// <param name="request">Its kit is that of <paramref name="made"/>.</param>
    /// <exception cref="Maths.RefusedException">A piece that cannot be drawn, or a fact of the shop out of its range.</exception>
    public static IEnumerable<PrintOut> Of(Made made, KitRequest request, CancellationToken stop = default)
    {
        if (made.Papers.IsEmpty) return KitFiles.Of(request, stop);
        var metal = request with { Kit = request.Kit with { Pieces = [.. request.Kit.Pieces.Where(p => !made.Papers.Contains(p.Name))] } };
        var paper = request with { Title = request.Title with { Material = "paper, printed at full size" } };
        var nest = KitNest.Of(metal, stop: stop);
        return
        [
            .. KitFiles.Whole(request),
            .. request.Kit.Pieces.SelectMany(p => KitFiles.Piece(made.Papers.Contains(p.Name) ? paper : request, p)),
            .. KitFiles.Solids(request),
            .. nest.Sheets.SelectMany((s, i) => KitFiles.Nested(metal, s, i)),
            KitFiles.Card(metal, nest),
        ];
    }
}
