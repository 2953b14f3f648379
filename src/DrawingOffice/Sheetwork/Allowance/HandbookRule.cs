using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Sheetwork;

/// <summary>The three groups of sheet of the engineers' handbooks.</summary>
public enum HandbookMetal
{
    /// <summary>Soft brass, soft copper: 0.55 T.</summary>
    Soft,

    /// <summary>Half-hard copper and brass, soft steel, aluminium: 0.64 T.</summary>
    Medium,

    /// <summary>Bronze, hard copper, cold-rolled steel, spring steel: 0.71 T.</summary>
    Hard,
}

/// <summary>
/// Handbook rule: a 90° bend takes c·T + 1.57·R, other angles in proportion. The printed 1.57 is kept; it is 0.05 % short of π/2.
/// </summary>
public sealed record HandbookRule(HandbookMetal Metal) : BendMethod
{
    /// <summary>Share of the thickness that a 90° bend takes besides 1.57 R.</summary>
    public double Coefficient => Metal switch
    {
        HandbookMetal.Soft => 0.55,
        HandbookMetal.Medium => 0.64,
        _ => 0.71,
    };

    protected override Parsed<BendAllowance> Compute(double turn, double radius, double thickness)
    {
        var length = (Coefficient * thickness + 1.57 * radius) * turn / (Math.PI / 2);
        ImmutableArray<string> cautions = Math.Abs(turn - Math.PI / 2) > 1e-9
            ? [$"the rule is given for 90°; {turn * 180 / Math.PI:0.#}° is taken in proportion"] : [];
        return new BendAllowance(length, null, (length / turn - radius) / thickness, $"handbook rule, {Coefficient:0.00} T + 1.57 R",
            "90°, other angles in proportion; one coefficient for all R/T", cautions);
    }
}
