using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting;

/// <summary>What a part must be before it is drawn.</summary>
static class Acceptance
{
    /// <summary>mm; a kilometre, as far as the print room writes.</summary>
    const double Farthest = 1e6;

    // A millionth of a millimetre between the end of one piece and the start of the next is rounding, more is a gap.
    const double Gap = 1e-6;

    public static void Check(FlatPart part)
    {
        if (part.Loops.IsDefaultOrEmpty || part.Loops.Any(l => l.IsDefaultOrEmpty)) throw Refused("outline", null, "a closed outline of lines and arcs is needed");
        foreach (var loop in part.Loops) CheckLoop(loop);
        foreach (var hole in part.Holes) CheckHole(hole);
        foreach (var slot in part.Slots) CheckSlot(slot);
        foreach (var fold in part.Folds) CheckPlaces("bend line", fold.From, fold.To, new(fold.Angle, fold.InsideRadius));
        if (part.Datum is { } datum) CheckPlaces("datum", datum.At);
        if (!(Math.Min(part.Bounds.Width, part.Bounds.Height) > 0)) throw Refused("outline", $"{part.Bounds.Width} × {part.Bounds.Height} mm", "an outline with a width and a height is needed");
    }

    static void CheckLoop(ImmutableArray<Segment> loop)
    {
        for (var i = 0; i < loop.Length; i++)
        {
            var (here, next) = (loop[i], loop[(i + 1) % loop.Length]);
            CheckPlaces("outline", here.From, here.To);
            if (here.To.DistanceTo(next.From) > Gap) throw Refused("outline", $"a gap at ({here.To.X:0.###}, {here.To.Y:0.###})", "each piece must begin where the last one ends");
            if (here is not ArcSegment arc) continue;
            CheckPlaces("outline arc", arc.Centre, new(arc.Sweep, 0));
            var turned = arc.Centre + (arc.From - arc.Centre).Turned(arc.Sweep);
            if (arc.Sweep == 0 || Math.Abs(arc.Sweep) > 2 * Math.PI + 1e-9 || turned.DistanceTo(arc.To) > 0.01)
                throw Refused("outline arc", $"sweep {arc.Sweep:0.####} from ({arc.From.X:0.###}, {arc.From.Y:0.###})", "centre and sweep must lead to the end of the arc within 0.01 mm");
        }
    }

    static void CheckHole(RoundHole hole)
    {
        CheckPlaces($"hole {hole.Id}", hole.Centre);
        if (!(hole.Diameter.Value > 0 && hole.Diameter.Value < Farthest)) throw Refused($"diameter of hole {hole.Id}", $"{hole.Diameter.Value}", "a positive number of mm is needed");
    }

    static void CheckSlot(LongHole slot)
    {
        CheckPlaces($"slot {slot.Id}", slot.Middle, new(slot.Turn, 0));
        if (!(slot.Width.Value > 0 && slot.Between.Value >= 0 && slot.Width.Value + slot.Between.Value < Farthest))
            throw Refused($"slot {slot.Id}", $"{slot.Width.Value} × {slot.Between.Value}", "a positive width and a distance of its ends in mm are needed");
    }

    static void CheckPlaces(string field, params ReadOnlySpan<Vec2> places)
    {
        foreach (var p in places)
        {
            if (!(Math.Abs(p.X) < Farthest && Math.Abs(p.Y) < Farthest)) throw Refused(field, $"({p.X}, {p.Y})", "numbers within a kilometre, in mm, are needed");
        }
    }

    static RefusedException Refused(string field, string? value, string wanted) => new(Refusal.Of(field, value, wanted));
}
