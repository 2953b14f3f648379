using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// Cuts away the sliver that a welded or free side leaves beside the end of a fold, as deep as a relief: too narrow for a notch of its own, it
/// would tear or stand in the corner.
/// </summary>
/// <param name="Corner">Of the face, where the side of the fold ends.</param>
/// <param name="Bend">Where the bend ends on that side.</param>
/// <param name="Along">Of the side in the walk of the face, length 1.</param>
readonly record struct CornerNotch(Vec2 Corner, Vec2 Bend, Vec2 Along)
{
    const double Same = 1e-6;

    public ImmutableArray<Vec2> Cut(ImmutableArray<Vec2> outline, Relief relief)
    {
        var gap = Corner.DistanceTo(Bend);
        if (gap <= Same || gap > relief.Width) return outline;
        var corner = Corner;
        var at = outline.ToList().FindIndex(p => p.DistanceTo(corner) <= Same);
        if (at < 0) return outline;
        var ends = (Corner - Bend).Dot(Along) > 0;
        var next = outline[(at + (ends ? 1 : outline.Length - 1)) % outline.Length];
        var inner = Bend + Along.Left * relief.Depth;
        // A side that leans over the bend is met before the relief's full depth.
        var (from, along) = (next - Corner).Dot(Along) * (ends ? 1 : -1) < 0 && Plane2.Meet(Bend, Along.Left, Corner, next - Corner) is { } low && (low - Bend).Dot(Along.Left) < relief.Depth
            ? (Bend, Along.Left) : (inner, Along);
        if (Plane2.Meet(from, along, Corner, next - Corner) is not { } meet || !((meet - Corner).Dot(next - Corner) is var t && t > 0 && t < (next - Corner).Dot(next - Corner))) return outline;
        ImmutableArray<Vec2> steps = from == Bend ? [Bend, meet] : [Bend, inner, meet];
        return [.. outline[..at], .. ends ? steps : steps.Reverse(), .. outline[(at + 1)..]];
    }
}
