using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Fabrication;

/// <summary>
/// Plug welds in place of spot welds. Three practices are in print and ask for very different holes; which one is used is always said.
/// Body: hole 8 mm in sheet to 1.2 mm, 10 mm to 3 mm, one for each spot. Sheet (a structural rule, AWS D1.3 as restated): fused diameter
/// 0.7 d − 1.5 t, at least 3/8 in. Plate (AWS D1.1 as restated): d at least t + 5/16 in, middles at least 4 d apart.
/// </summary>
public static class Plugs
{
    /// <summary>Above it the body practice is not used, mm.</summary>
    public const double BodyThickest = 3;

    const double LeastFused = 9.525;
    const double PlateAllowance = 7.9375;

    /// <summary>Nugget of a spot weld by 5 √t, mm; t of the thinner sheet, 0.4 to 3.2 mm.</summary>
    public static double Nugget(double thinner) => 5 * Math.Sqrt(thinner);

    /// <summary>What fuses at the meeting faces by the sheet rule, mm; 0 where the hole is too small for it to say anything.</summary>
    public static double Fused(double hole, double thickness) => Math.Max(0, 0.7 * hole - 1.5 * thickness);

    /// <param name="rule">Null takes the body practice up to 3 mm and the plate rule above.</param>
    public static Parsed<PlugWelds> For(SpotRow row, PlugRule? rule = null)
    {
        if (!(row.Thinner is >= 0.4 and <= 16)) return Refusal.Of($"spots {row.Name}, thickness", $"{row.Thinner}", "give 0.4 to 16 mm");
        if (row.Spots < 1 || !(row.Row > 0)) return Refusal.Of($"spots {row.Name}", $"{row.Spots} in {row.Row} mm", "give how many there were and the length of their row");
        var used = rule ?? (row.Thinner <= BodyThickest ? PlugRule.Body : PlugRule.Plate);
        if (used == PlugRule.Body && row.Thinner > BodyThickest) return Refusal.Of($"spots {row.Name}, rule", "body", $"body practice ends at {BodyThickest} mm; write sheet or plate");
        var nugget = Nugget(row.Thinner);
        var spots = row.Spots * Area(nugget);
        var hole = Hole(used, row.Thinner);
        var fused = used == PlugRule.Plate ? hole : Fused(hole, row.Thinner);
        var byArea = (int)Math.Ceiling(spots / Area(fused) - 1e-9);
        var count = used == PlugRule.Body ? row.Spots : Math.Max(byArea, Math.Min(2, row.Spots));
        var pitch = count > 1 ? row.Row / (count - 1) : row.Row;
        return new PlugWelds(used, count, hole, pitch, spots, count * Area(fused), Words(used, row, nugget, hole, fused), Cautions(used, row, count, byArea, hole, pitch));
    }

    static double Area(double diameter) => Math.PI / 4 * diameter * diameter;

    static double Hole(PlugRule rule, double t) => rule switch
    {
        PlugRule.Body => t <= 1.2 ? 8 : 10,
        // Drills go by half millimetres; rounded up.
        PlugRule.Sheet => Math.Ceiling((LeastFused + 1.5 * t) / 0.7 * 2) / 2,
        _ => Math.Ceiling((t + PlateAllowance) * 2) / 2,
    };

    static string Words(PlugRule rule, SpotRow row, double nugget, double hole, double fused)
    {
        var t = N(row.Thinner);
        var spot = $"A spot on {t} mm sheet is {N(nugget)} mm across (5 √t, as published for general use).";
        return rule switch
        {
            PlugRule.Body => $"{spot} Body repair practice: one hole of {N(hole)} mm for each spot, in the places of the old ones or beside them (a collision-repair trade body's pages: 8 mm, as many as the works had). The structural rules for sheet and plate ask for far larger holes and are not meant for panels.",
            PlugRule.Sheet => $"{spot} Structural rule for sheet (AWS D1.3 as restated): {N(fused)} mm fuses in a hole of {N(hole)} mm (0.7 d − 1.5 t, at least 3/8 in); as many as give the shear area of the spots.",
            _ => $"{spot} Structural rule for plate (AWS D1.1 as restated): hole at least the thickness + 5/16 in = {N(hole)} mm, filled to the full thickness; as many as give the shear area of the spots.",
        };
    }

    static ImmutableArray<Caution> Cautions(PlugRule rule, SpotRow row, int count, int byArea, double hole, double pitch)
    {
        var cautions = ImmutableArray.CreateBuilder<Caution>();
        if (rule == PlugRule.Body && byArea > row.Spots)
            cautions.Add(new(CautionKind.Weld, $"{row.Name}: reckoned by the structural rule for sheet, a hole of {N(hole)} mm fuses less than a spot, and {byArea} plugs would be needed for the shear area of {row.Spots} spots. Where the part carries load set more, and ask an engineer.", [row.Name], count, byArea));
        if (rule == PlugRule.Plate && count > 1 && pitch < 4 * hole)
            cautions.Add(new(CautionKind.Weld, $"{row.Name}: middles are {N(pitch)} mm apart; the plate rule wants 4 holes' width, {N(4 * hole)} mm. {Fit(row, count, 4 * hole)}, or run a fillet along the edge.", [row.Name], pitch, 4 * hole));
        if (rule != PlugRule.Plate && count > 1 && pitch < 2 * hole)
            cautions.Add(new(CautionKind.Weld, $"{row.Name}: middles are {N(pitch)} mm apart, under twice the {N(hole)} mm hole: the sheet between is weakened. {Fit(row, count, 2 * hole)}.", [row.Name], pitch, 2 * hole));
        return cautions.ToImmutable();
    }

    /// <summary>How many of the plugs stand in the row at the least pitch.</summary>
    static string Fit(SpotRow row, int count, double pitch)
    {
        var fit = (int)Math.Floor(row.Row / pitch + 1e-9) + 1;
        return $"Of {count} plugs {fit} {(fit == 1 ? "fits" : "fit")} in the row of {N(row.Row)} mm: set the rest in further rows";
    }

    static string N(double mm) => mm.ToString("0.##", CultureInfo.InvariantCulture);
}
