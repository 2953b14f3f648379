using System.Collections.Immutable;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// A blank overlaps itself exactly when its outline meets itself: the outline is one closed walk, and a closed walk that never
/// meets itself bounds one simple piece.
/// </summary>
static class Overlap
{
    /// <summary>Arcs are tested by chords this near, mm.</summary>
    const double ChordError = 0.01;

    public static ImmutableArray<Caution> Of(Loop outline)
    {
        var crossings = Crossings.Of(outline.Flatten(ChordError).AsSpan(), 8);
        return [.. crossings.Select(c => new Caution(CautionKind.BlankOverlaps,
            $"The blank runs into itself at x {c.At.X:0.0}, y {c.At.Y:0.0} mm: it cannot be cut in one piece like this; move a seam or cut the flange back.", []))];
    }
}
