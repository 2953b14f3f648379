using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>What an edge asks to be cut beyond the finished edge, mm.</summary>
/// <param name="Exact">By the line at mid-thickness, which keeps its length.</param>
/// <param name="Shop">By the usual shop rule.</param>
/// <param name="Rule">In words, with its source.</param>
public sealed record EdgeAllowance(double Exact, double Shop, string Rule);

/// <summary>Edges rolled round a wire or folded on themselves.</summary>
public static class EdgeAllowances
{
    /// <summary>
    /// A wired edge: the sheet runs under the wire, round it, and its edge comes down on the sheet again. Exact: mid radius (d + T)/2 over the angle
    /// 2π − arccos(d/(d + 2T)), less the half width of the roll. Shop rule: 2½ wire diameters.
    /// </summary>
    public static Parsed<EdgeAllowance> Wired(double wire, double thickness)
    {
        if (!(thickness > 0)) return Refusal.Of("thickness", $"{thickness}", "give a thickness above 0");
        if (!(wire > 0 && double.IsFinite(wire))) return Refusal.Of("wire", $"{wire}", "give a diameter above 0");
        if (wire < thickness) return Refusal.Of("wire", $"{wire:0.##} mm", $"a wire thinner than the sheet, {thickness:0.##} mm, cannot be rolled in; make a hem");
        var wrapped = (2 * Math.PI - Math.Acos(wire / (wire + 2 * thickness))) * (wire + thickness) / 2;
        return new EdgeAllowance(wrapped - (wire / 2 + thickness), 2.5 * wire, "2½ times the wire (US Navy training course Steelworker vol. 2; Irish trade course Sheet Metalwork, unit Wiring)");
    }

    /// <summary>
    /// A hem: the edge folded back by half a turn about an inside radius (0: closed flat). Exact: the return less what the bend saves, W − 2 (R + T)
    /// + π (R + T/2) for each fold. Shop rule: the width of the hem for each fold.
    /// </summary>
    /// <param name="width">From the folded edge back to the raw one; the finished hem.</param>
    /// <param name="folds">1, or 2 for a double hem, whose second fold goes round the first.</param>
    public static Parsed<EdgeAllowance> Hemmed(double width, double radius, double thickness, int folds = 1)
    {
        if (!(thickness > 0)) return Refusal.Of("thickness", $"{thickness}", "give a thickness above 0");
        if (!(radius >= 0 && double.IsFinite(radius))) return Refusal.Of("hem, inside radius", $"{radius}", "give 0 or more, mm");
        if (folds is not (1 or 2)) return Refusal.Of("hem, folds", $"{folds}", "a hem is folded once or twice");
        if (folds == 2 && radius > 0) return Refusal.Of("hem, inside radius", $"{radius:0.##} mm", "a double hem is closed flat; leave it out");
        // The second fold of a double hem goes round the first return: one thickness inside it.
        double[] radii = folds == 1 ? [radius] : [0, thickness / 2];
        var widest = radii.Max() + thickness;
        if (!(width >= widest && double.IsFinite(width))) return Refusal.Of("hem, width", $"{width:0.##} mm", $"the fold alone takes {widest:0.##} mm");
        var exact = radii.Sum(r => width - 2 * (r + thickness) + Math.PI * (r + thickness / 2));
        return new EdgeAllowance(exact, folds * width, $"{(folds == 1 ? "once" : "twice")} the width of the hem (US Navy training course Steelworker vol. 2)");
    }
}
