using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions;

/// <summary>Radii, equal ones once with their count; a whole circle of outline by its diameter.</summary>
static class Arcs
{
    // Radii are alike when a radius gauge could not tell them apart, mm.
    const double Alike = 0.1;

    public static void Draw(Board board, FlatPart part, double scale, Listing list)
    {
        var arcs = part.Loops.SelectMany(l => l).OfType<ArcSegment>().OrderBy(a => a.Radius).ToList();
        while (arcs.Count > 0)
        {
            var alike = arcs.Where(a => a.Radius - arcs[0].Radius <= Alike).ToList();
            // The measured figure is one arc's own, not a mean of several.
            var shown = alike[0];
            var outwards = (shown.From - shown.Centre).Turned(shown.Sweep / 2);
            var whole = Math.Abs(shown.Sweep) > 2 * Math.PI - 1e-9;
            if (whole) outwards = Vec2.Polar(Math.PI / 3, shown.Radius);
            Leader.Led(board, (shown.Centre + outwards) * scale, 0, list.Arc(shown, outwards, alike.Count, whole), Leader.Along(outwards.Angle));
            arcs.RemoveRange(0, alike.Count);
        }
    }
}
