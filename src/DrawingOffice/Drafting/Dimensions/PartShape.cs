using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions;

/// <summary>The bare shape at a scale: outlines, holes with their centre lines, fold lines.</summary>
static class PartShape
{
    /// <summary>Centre lines run this far past the rim, mm on paper.</summary>
    public const double Past = 2;

    public static void Draw(Board board, FlatPart part, double scale)
    {
        foreach (var loop in part.Loops) DrawLoop(board, loop, scale);
        foreach (var fold in part.Folds) board.Line(fold.From * scale, fold.To * scale, Layers.Bends, Stroke.Fold);
        foreach (var hole in part.Holes) DrawHole(board, hole.Centre * scale, hole.Diameter.Value / 2 * scale);
        foreach (var slot in part.Slots) DrawSlot(board, slot, scale);
        foreach (var circle in part.PitchCircles) board.Add(new CircleMark(circle.Centre * scale, circle.Radius * scale, Layers.Centre, Stroke.Centre));
        foreach (var (from, to) in part.MiddleLines) board.Line(from * scale, to * scale, Layers.Centre, Stroke.Centre);
    }

    static void DrawLoop(Board board, ImmutableArray<Segment> loop, double scale)
    {
        foreach (var s in loop)
        {
            Mark mark = s is ArcSegment arc
                ? Arc(arc.Centre * scale, arc.Radius * scale, (arc.From - arc.Centre).Angle, arc.Sweep)
                : new LineMark(s.From * scale, s.To * scale, Layers.Outline, Stroke.Outline);
            board.Add(mark);
            board.Clear.Chain([.. Outlines.Points(s).Append(s.To).Select(p => p * scale)], closed: false);
        }
    }

    static Mark Arc(Vec2 centre, double radius, double start, double sweep) => Math.Abs(sweep) > 2 * Math.PI - 1e-9
        ? new CircleMark(centre, radius, Layers.Outline, Stroke.Outline)
        : new ArcMark(centre, radius, start, sweep, Layers.Outline, Stroke.Outline);

    static void DrawHole(Board board, Vec2 centre, double radius)
    {
        board.Circle(centre, radius, Layers.Holes, Stroke.Outline);
        Cross(board, centre, new(1, 0), radius + Past, radius + Past);
    }

    static void DrawSlot(Board board, LongHole slot, double scale)
    {
        var (middle, along) = (slot.Middle * scale, Vec2.Polar(slot.Turn));
        var (half, radius) = (slot.Between.Value / 2 * scale, slot.Width.Value / 2 * scale);
        foreach (var way in new[] { along, -along })
        {
            var end = middle + way * half;
            board.Add(new ArcMark(end, radius, way.Angle - Math.PI / 2, Math.PI, Layers.Holes, Stroke.Outline));
            board.Line(end + way.Left * radius, end - way * (2 * half) + way.Left * radius, Layers.Holes, Stroke.Outline);
            board.Clear.Disc(end, radius);
            board.Line(end - way.Left * (radius + Past), end + way.Left * (radius + Past), Layers.Centre, Stroke.Centre);
        }
        Cross(board, middle, along, half + radius + Past, radius + Past);
    }

    static void Cross(Board board, Vec2 middle, Vec2 along, double halfAlong, double halfAcross)
    {
        board.Line(middle - along * halfAlong, middle + along * halfAlong, Layers.Centre, Stroke.Centre);
        board.Line(middle - along.Left * halfAcross, middle + along.Left * halfAcross, Layers.Centre, Stroke.Centre);
    }
}
