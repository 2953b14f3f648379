using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>What hurts in welding sheet, in plain words (common practice; local rules and the makers' sheets come first).</summary>
public static class Safety
{
    public static ImmutableArray<Caution> Welding { get; } =
    [
        Of("The arc burns eyes and skin in seconds: helmet, gloves, covered skin, a screen for whoever stands by."),
        Of("Fumes: draw them off or weld in moving air. Zinc, lead paint and chlorinated cleaner make fumes that poison: take zinc and paint off 30 mm each side, dry off cleaner, wear the right mask."),
        Of("Weld-through primer on the faces that meet, ground off where the arc strikes; the fumes of it count too."),
        Of("Never weld a tank, a drum or a sealed box that held fuel: it can burst even when empty for years. That is work for a licensed firm."),
        Of("Fire watch: clear what burns, an extinguisher and water at hand, somebody to look, and look again for an hour after. Disconnect the battery."),
        Of("A part that carries load, steering, brakes, springs, belts or people is to be judged by an engineer and by the local rules before it is cut or welded.", CautionKind.Strength),
    ];

    static Caution Of(string words, CautionKind kind = CautionKind.Safety) => new(kind, words, []);
}
