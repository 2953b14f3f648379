using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting;

namespace WitnessMark.FrontOffice.CardJob;

/// <summary>What a flat part measures.</summary>
/// <param name="Area">Of metal, mm².</param>
/// <param name="CutLength">Outline, cut-outs and slots; round holes are drilled and not counted, mm.</param>
public readonly record struct FlatFigures(double Area, double CutLength)
{
    public static FlatFigures Of(FlatPart part)
    {
        var outline = Math.Abs(SignedArea(part.Loops[0]));
        var cutOuts = part.Loops.Skip(1).Sum(l => Math.Abs(SignedArea(l)));
        var holes = part.Holes.Sum(h => Math.PI * h.Diameter.Value * h.Diameter.Value / 4);
        var slots = part.Slots.Sum(s => s.Width.Value * s.Between.Value + Math.PI * s.Width.Value * s.Width.Value / 4);
        var length = part.Loops.Sum(l => l.Sum(Length)) + part.Slots.Sum(s => 2 * s.Between.Value + Math.PI * s.Width.Value);
        return new(outline - cutOuts - holes - slots, length);
    }

    static double Length(Segment s) => s is ArcSegment arc ? arc.Radius * Math.Abs(arc.Sweep) : s.From.DistanceTo(s.To);

    /// <summary>Trapezoids under the chords, and for an arc the circular segment between chord and arc, R²(φ − sin φ)/2.</summary>
    static double SignedArea(ImmutableArray<Segment> loop) =>
        loop.Sum(s => s.From.Cross(s.To) / 2 + (s is ArcSegment a ? a.Radius * a.Radius * (a.Sweep - Math.Sin(a.Sweep)) / 2 : 0));
}
