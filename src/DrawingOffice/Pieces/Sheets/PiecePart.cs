using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.Maths.Geometry;
using Folded = WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.DrawingOffice.Pieces.Sheets;

/// <summary>A piece as the drafting table takes a flat part.</summary>
public static class PiecePart
{
    /// <summary>More bends than this, and those that run in a curve, are left to the 1:1 sheet.</summary>
    const int MostFolds = 12;

    public static FlatPart Of(Piece piece)
    {
        var straight = piece.Creases.Where(c => c.Line.Length == 2).ToList();
        var shown = straight.Count <= MostFolds ? straight : [];
        return new([Segments(piece.Outline), .. piece.Openings.Where(o => o is not (Folded.RoundHole or Folded.Slot)).Select(o => Segments(o.Edge))])
        {
            Holes = [.. piece.Openings.OfType<Folded.RoundHole>().Select(h => new RoundHole(h.Id, h.At, new(h.Diameter)))],
            Slots = [.. piece.Openings.OfType<Folded.Slot>().Select(s => new LongHole(s.Id, s.At, s.Turn, new(s.Width), new(s.Length - s.Width)))],
            Folds = [.. shown.Select(c => new FoldLine(c.Line[0], c.Line[1], c.Angle, c.InsideRadius))],
            Designed = true,
            Notes = [.. piece.Notes, .. shown.Count < piece.Creases.Length ? ["Not all bends are shown here: take them from the 1:1 sheet."] : ImmutableArray<string>.Empty],
        };
    }

    static ImmutableArray<Segment> Segments(Loop loop) =>
    [
        .. Enumerable.Range(0, loop.Count).Select<int, Segment>(i =>
        {
            if (loop.Straight(i)) return new LineSegment(loop.Start(i), loop.End(i));
            var arc = Arc.Of(loop.Start(i), loop.End(i), loop.Corners[i].Bulge);
            return new ArcSegment(loop.Start(i), loop.End(i), arc.Centre, arc.Sweep);
        }),
    ];
}
