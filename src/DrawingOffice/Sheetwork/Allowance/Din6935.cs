using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>
/// DIN 6935, cold bending of flat rolled steel: neutral axis at k·T/2 from the inside with k = 0.65 + ½·log₁₀(R/T), at most 1 (reached
/// at R/T = 5). Up to 15° the standard sets the compensation value to 0: the flat length is the sum of the outside legs.
/// Its table of k begins at R/T = 0.65; the formula is carried down to 0.2 with a caution and refused below, where k falls to nothing.
/// </summary>
public sealed record Din6935 : BendMethod
{
    const double TableBegins = 0.65;
    const double FormulaEnds = 0.2;
    const double NoCompensation = 15 * Math.PI / 180;

    /// <summary>k of the standard, 0 to 1; <paramref name="ratio"/> is R/T, positive.</summary>
    public static double CorrectionFactor(double ratio) => Math.Min(1, 0.65 + 0.5 * Math.Log10(ratio));

    /// <summary>Compensation value v, mm: flat length = sum of the outside legs + v.</summary>
    public static double Compensation(double turn, double radius, double thickness) =>
        turn <= NoCompensation ? 0
            : turn * (radius + CorrectionFactor(radius / thickness) * thickness / 2) - 2 * Setback.Outside(turn, radius, thickness);

    protected override Parsed<BendAllowance> Compute(double turn, double radius, double thickness)
    {
        var ratio = radius / thickness;
        if (ratio < FormulaEnds)
            return Refusal.Of("inside radius", $"{radius:0.###} mm on {thickness:0.###} mm sheet", $"DIN 6935 says nothing below {FormulaEnds} of the thickness; use a test bend or a fixed neutral-axis factor");
        ImmutableArray<string> cautions = ratio < TableBegins
            ? [$"radius is {ratio:0.00} of the thickness; DIN 6935 tabulates from {TableBegins}, below it the sheet thins and a test bend is the safer guide"] : [];
        var length = Compensation(turn, radius, thickness) + 2 * Setback.Outside(turn, radius, thickness);
        return new BendAllowance(length, null, (length / turn - radius) / thickness, "DIN 6935", "steel, R/T from 0.65, bend 0 to 180° from flat", cautions);
    }
}
