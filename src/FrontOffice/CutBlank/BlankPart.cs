using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths.Geometry;
using Drawn = WitnessMark.DrawingOffice.Drafting;
using Folded = WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.FrontOffice.CutBlank;

/// <summary>A blank as the drafting table takes a flat part.</summary>
static class BlankPart
{
    public static FlatPart Of(Blank blank, ImmutableArray<Caution> cautions, BendOrder? order) =>
        new([Segments(blank.Outline), .. blank.Openings.OfType<CutOut>().Select(c => Segments(c.Outline))])
        {
            Holes = [.. blank.Openings.OfType<Folded.RoundHole>().Select(h => new Drawn.RoundHole(h.Id, h.At, new(h.Diameter)))],
            Slots = [.. blank.Openings.OfType<Slot>().Select(s => new LongHole(s.Id, s.At, s.Turn, new(s.Width), new(s.Length - s.Width)))],
            Folds = [.. blank.BendLines.Select(b => new FoldLine(b.MiddleFrom, b.MiddleTo, b.Angle, b.InsideRadius))],
            Designed = true,
            Notes = [.. order is { Possible: true } ? order.Steps.Select((s, i) => $"Fold {i + 1}. {s.Words}") : [], .. cautions.Select(c => c.Words)],
        };

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
