using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Pieces.Sheets;
using WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.FrontOffice.CutBlank;

/// <summary>A blank as the drafting table takes a flat part.</summary>
static class BlankPart
{
    public static FlatPart Of(Blank blank, ImmutableArray<Caution> cautions, BendOrder? order)
    {
        var part = PiecePart.Of(Piece.Of(blank));
        return part with { Notes = [.. part.Notes, .. order is { Possible: true } ? order.Steps.Select((s, i) => $"Fold {i + 1}. {s.Words}") : [], .. cautions.Select(c => c.Words)] };
    }
}
