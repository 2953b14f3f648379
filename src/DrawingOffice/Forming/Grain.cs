using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Forming;

/// <summary>How the bend line lies to the direction in which the sheet was rolled.</summary>
public enum Grain
{
    /// <summary>Bend line square to the rolling: the fibres run round the bend. The best way.</summary>
    Across,

    Slanting,

    /// <summary>Bend line along the rolling: the sheet cracks soonest.</summary>
    Along,
}

/// <summary>Least inside radius of a bend, mm, by elongation at break and grain.</summary>
public static class LeastRadius
{
    /// <summary>How much wider the radius must be than for a bend across the grain (common practice).</summary>
    public static double Factor(Grain grain) => grain switch { Grain.Along => 2, Grain.Slanting => 1.5, _ => 1 };

    /// <summary>Null where the elongation is not known. Cautious: <see cref="MinimumRadius.FromElongation"/> says why.</summary>
    public static double? Of(Material material, double thickness, Grain grain) =>
        (material.Elongation.Low ?? material.Elongation.High) is { } e and > 0 ? Factor(grain) * MinimumRadius.FromElongation(e, thickness) : null;
}
