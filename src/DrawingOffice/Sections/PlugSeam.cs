using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Sections;

/// <summary>
/// What plug welds along a join bear in shear, and how near they must stand so that two sheets act as one. Rule (from memory, after the sheet
/// steel practice for arc spots): the lesser of the weld metal on the hole's area at 0.6 of the sheet's least tensile strength and tearing
/// round the plug, 2.2 t (d − t) of it, divided by <see cref="Factor"/>. A plug burnt through one side only or without fusion bears next to nothing.
/// </summary>
public static class PlugSeam
{
    /// <summary>Between what a test piece bears and what is reckoned with.</summary>
    public const double Factor = 2.5;

    /// <summary>Plugs nearer than this many diameters draw each other's heat: weld the seam through instead (common practice).</summary>
    public const double ClosestDiameters = 3;

    /// <summary>N for one plug.</summary>
    /// <param name="hole">Diameter, mm, more than the thickness of the thinner sheet.</param>
    /// <param name="thickness">Of the thinner sheet, mm.</param>
    public static double Bears(double hole, double thickness, Material material)
    {
        var strength = material.Ultimate.Low ?? material.Ultimate.High ?? 0;
        return Math.Min(0.6 * strength * Math.PI * hole * hole / 4, 2.2 * thickness * (hole - thickness) * strength) / Factor;
    }
}

/// <summary>A join and the pitch of plugs it needs.</summary>
/// <param name="Flow">Force that passes from sheet to sheet, N for each mm of length.</param>
/// <param name="Plug">What one plug bears, N; null for a seam welded through.</param>
/// <param name="Pitch">Greatest pitch that carries the flow, mm; null without plugs. Infinite when nothing passes.</param>
public sealed record JoinNeed(Join Join, double Flow, double? Plug, double? Pitch)
{
    /// <summary>The plugs stand near enough, or the seam is welded through.</summary>
    public bool Carries => Pitch is not { } most || Join.Pitch is { } chosen && chosen <= most;

    /// <summary>Plugs that near are no longer plugs.</summary>
    public bool TooNear => Pitch < PlugSeam.ClosestDiameters * Join.Plug;
}
