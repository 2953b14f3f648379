using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Forming;

/// <summary>
/// Force to bend a sheet: F = K·UTS·w·T²/D (published-form handbook rule; K 1.33 for air bending over a V, 0.33 for wiping round an edge). N.
/// A guide to about a fifth: friction, a worn die and a sheet at the high end of its strength are not in it.
/// </summary>
public static class BendForce
{
    public const double Vee = 1.33;
    public const double Wiping = 0.33;

    /// <summary>Opening usually taken for air bending, in thicknesses (common practice).</summary>
    public const double UsualOpening = 8;

    /// <param name="bendLength">mm.</param>
    /// <param name="ultimate">Tensile strength, MPa.</param>
    /// <param name="opening">Between the edges of the V, mm; at least twice the thickness.</param>
    public static Parsed<double> AirBend(double bendLength, double thickness, double ultimate, double opening) =>
        Of(Vee, bendLength, thickness, ultimate, opening, "die opening", 2 * thickness);

    /// <param name="lever">From the edge that clamps to where the wiper presses: nose radius, sheet and wiper radius, mm; at least the thickness.</param>
    public static Parsed<double> Wipe(double bendLength, double thickness, double ultimate, double lever) =>
        Of(Wiping, bendLength, thickness, ultimate, lever, "lever", thickness);

    /// <summary>
    /// Moment that folds a sheet, N mm: the whole depth at its tensile strength, UTS·w·T²/4, the most it can be; a folding beam and a vice feel it
    /// whatever their lever.
    /// </summary>
    public static double FoldingMoment(double bendLength, double thickness, double ultimate) => ultimate * bendLength * thickness * thickness / 4;

    static Parsed<double> Of(double k, double length, double thickness, double ultimate, double span, string name, double least)
    {
        foreach (var (field, value) in new[] { ("bend length", length), ("thickness", thickness), ("tensile strength", ultimate) })
            if (!(value > 0 && double.IsFinite(value))) return Refusal.Of(field, $"{value}", "give a number above 0");
        if (!(span >= least && double.IsFinite(span))) return Refusal.Of(name, $"{span:0.###} mm", $"give at least {least:0.###} mm");
        return k * ultimate * length * thickness * thickness / span;
    }
}
