using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>What hurts in cutting, folding and welding sheet, in plain words (common practice; local rules and the makers' sheets come first).</summary>
public static class Safety
{
    /// <summary>Of every piece of sheet, welded or not.</summary>
    public static ImmutableArray<Caution> Sheet { get; } =
    [
        Of("Cut sheet has edges that slice: gloves, and take the burr off every edge before it is handled or folded."),
        Of("A folder crushes and a flange swings up: fingers clear of the beam and the clamp, nobody behind it; glasses when a bend is hammered in the vice."),
        Of("A part that carries load, steering, brakes, springs, belts or people is to be judged by an engineer and by the local rules before it is cut, folded or welded.", CautionKind.Strength),
    ];

    /// <summary>More, where there is a weld.</summary>
    public static ImmutableArray<Caution> Welding { get; } =
    [
        Of("The arc burns eyes and skin in seconds: helmet, gloves, covered skin, a screen for whoever stands by."),
        Of("Fumes: draw them off or weld in moving air. Zinc, lead paint and chlorinated cleaner make fumes that poison: take zinc and paint off 30 mm each side, dry off cleaner, wear the right mask."),
        Of("Weld-through primer on the faces that meet, ground off where the arc strikes; the fumes of it count too."),
        Of("Never weld a tank, a drum or a sealed box that held fuel: it can burst even when empty for years. That is work for a licensed firm."),
        Of("Fire watch: clear what burns, an extinguisher and water at hand, somebody to look, and look again for an hour after. Disconnect the battery."),
    ];

    static Caution Of(string words, CautionKind kind = CautionKind.Safety) => new(kind, words, []);
}
