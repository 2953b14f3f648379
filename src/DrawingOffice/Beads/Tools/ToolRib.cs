using WitnessMark.DrawingOffice.Forming;
using WitnessMark.Maths;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>
/// The bead as the tool holds it, so that the wanted one is left after release: both arcs sharper, the slope steeper, straight parts as long as wanted.
/// Spring-back as of a free bend, and the slope by whichever arc opens more, so the depth errs deep; a sheet stretched over the tool opens less.
/// Try one bead before the row.
/// </summary>
/// <param name="Middle">At mid-thickness.</param>
/// <param name="Edge">Inside radius of the edge arcs on the tool and its range over the yield of the material, mm.</param>
/// <param name="Crown">Inside radius of the crown, likewise.</param>
public sealed record ToolRib(Rib Wanted, Rib Middle, Spread Edge, Spread Crown)
{
    /// <summary>Deeper than wanted, mm.</summary>
    public double Deeper => Middle.Depth - Wanted.Depth;

    public static Parsed<ToolRib> Of(Rib rib, double thickness, double length, Material material)
    {
        var (edge, crown) = (Bend(rib.Edge), Bend(rib.Crown));
        if ((edge.Refusal ?? crown.Refusal) is { } refusal) return refusal;
        // Steeper than upright the tool could not be drawn out of the bead.
        var turn = Math.Min(Math.PI / 2, Math.Max(edge.Value.Angle.Value, crown.Value.Angle.Value));
        var middle = rib with { Edge = edge.Value.Radius.Value + thickness / 2, Crown = crown.Value.Radius.Value + thickness / 2, Turn = turn };
        return new ToolRib(rib, middle, edge.Value.Radius, crown.Value.Radius);

        // A sharp inside corner springs like the sharpest that the relation takes.
        Parsed<Overbend> Bend(double middleRadius) => Overbend.Of(new(Math.Max(middleRadius - thickness / 2, thickness / 100), rib.Turn, thickness, length), material);
    }
}
