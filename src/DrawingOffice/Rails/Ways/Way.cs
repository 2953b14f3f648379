using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>How a flange comes to be on its web.</summary>
public enum WayKind { Fold, Hammer, Notch, Separate }

/// <summary>One way to make a flange, with what it costs.</summary>
/// <param name="Reachable">The metal and the hand can do it, by the limits stated.</param>
/// <param name="Hours">Rough, common practice.</param>
/// <param name="WeldLength">mm.</param>
/// <param name="Cuts">V-notches cut and slits that open, both.</param>
/// <param name="CutWidth">Of each V at the free edge, or of each opening, mm.</param>
/// <param name="CutDepth">From the free edge, mm.</param>
/// <param name="Words">Why, and with what limit.</param>
public sealed record Way(WayKind Kind, bool Reachable, double Hours, double WeldLength, int Cuts, double CutWidth, double CutDepth, string Words);

/// <summary>The ways for one flange, best first.</summary>
public sealed record EdgeWays(EdgeStrain Strain, ImmutableArray<Way> Ways);

/// <summary>What a sheet bears before it necks, and what a hand can shrink.</summary>
/// <param name="Stretch">Share of length.</param>
/// <param name="Shrink">Share of length.</param>
public sealed record WorkLimits(double Stretch, double Shrink)
{
    /// <summary>
    /// Stretch: two thirds of the elongation at break is uniform, the rest is the neck (common practice; 10 % where no elongation is known).
    /// Shrink: 5 % over a former in steps, flanges to 25 thicknesses wide; wider or more and the buckles fold over (common practice).
    /// </summary>
    public static WorkLimits Of(double? elongationPercent) => new((elongationPercent is > 0 and var e ? e / 100 * 2 / 3 : 0.1), 0.05);

    /// <summary>Widest flange that is shrunk by hand, thicknesses.</summary>
    public const double WidestShrunk = 25;
}
