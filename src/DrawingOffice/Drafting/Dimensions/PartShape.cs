using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions;

/// <summary>The bare shape at a scale: outlines, holes with their centre lines, fold lines.</summary>
static class PartShape
{
    // Centre lines run this far past the rim, mm on paper.
    const double Past = 2;

    public static void Draw(Pen pen, FlatPart part, double scale)
    {
        foreach (var loop in part.Loops) DrawLoop(pen, loop, scale);
        foreach (var fold in part.Folds) pen.Line(fold.From * scale, fold.To * scale, Layers.Bends, Stroke.Fold);
        foreach (var hole in part.Holes) DrawHole(pen, hole.Centre * scale, hole.Diameter.Value / 2 * scale);
        foreach (var slot in part.Slots) DrawSlot(pen, slot, scale);
    }

    static void DrawLoop(Pen pen, ImmutableArray<Segment> loop, double scale)
    {
        foreach (var s in loop)
        {
            Mark mark = s is ArcSegment arc
                ? Arc(arc.Centre * scale, arc.Radius * scale, (arc.From - arc.Centre).Angle, arc.Sweep)
                : new LineMark(s.From * scale, s.To * scale, Layers.Outline, Stroke.Outline);
            pen.Add(mark);
            pen.Clear.Chain([.. Outlines.Points(s).Append(s.To).Select(p => p * scale)], closed: false);
        }
    }

    static Mark Arc(Vec2 centre, double radius, double start, double sweep) => Math.Abs(sweep) > 2 * Math.PI - 1e-9
        ? new CircleMark(centre, radius, Layers.Outline, Stroke.Outline)
        : new ArcMark(centre, radius, start, sweep, Layers.Outline, Stroke.Outline);

    static void DrawHole(Pen pen, Vec2 centre, double radius)
    {
        pen.Circle(centre, radius, Layers.Holes, Stroke.Outline);
        Cross(pen, centre, new(1, 0), radius + Past, radius + Past);
    }

    static void DrawSlot(Pen pen, LongHole slot, double scale)
    {
        var (middle, along) = (slot.Middle * scale, Vec2.Polar(slot.Turn));
        var (half, radius) = (slot.Between.Value / 2 * scale, slot.Width.Value / 2 * scale);
        foreach (var way in new[] { along, -along })
        {
            var end = middle + way * half;
            pen.Add(new ArcMark(end, radius, way.Angle - Math.PI / 2, Math.PI, Layers.Holes, Stroke.Outline));
            pen.Line(end + way.Left * radius, end - way * (2 * half) + way.Left * radius, Layers.Holes, Stroke.Outline);
            pen.Clear.Disc(end, radius);
            pen.Line(end - way.Left * (radius + Past), end + way.Left * (radius + Past), Layers.Centre, Stroke.Centre);
        }
        Cross(pen, middle, along, half + radius + Past, radius + Past);
    }

    static void Cross(Pen pen, Vec2 middle, Vec2 along, double halfAlong, double halfAcross)
    {
        pen.Line(middle - along * halfAlong, middle + along * halfAlong, Layers.Centre, Stroke.Centre);
        pen.Line(middle - along.Left * halfAcross, middle + along.Left * halfAcross, Layers.Centre, Stroke.Centre);
    }
}
