using WitnessMark.DrawingOffice.Sections;
using WitnessMark.DrawingOffice.Sheetwork;

namespace WitnessMark.FrontOffice.CompareSections;

/// <summary>What figures of a section do not say.</summary>
static class SectionCautions
{
    public static IEnumerable<Caution> Of(ReckonedSection original, ReckonedSection? copy)
    {
        var made = copy ?? original;
        foreach (var need in made.Joins)
        {
            var where = $"{need.Join.First} to {need.Join.Second} at {need.Join.At.X:0.#}, {need.Join.At.Y:0.#}";
            if (need.TooNear)
                yield return new(CautionKind.Weld, $"Join {where} needs plugs every {need.Pitch:0} mm, nearer than {PlugSeam.ClosestDiameters:0} diameters: weld that seam through, or take larger plugs.", [need.Join.First, need.Join.Second], need.Pitch!.Value, PlugSeam.ClosestDiameters * need.Join.Plug!.Value);
            else if (need is { Carries: false, Join.Pitch: { } pitch })
                yield return new(CautionKind.Weld, $"Join {where}: plugs of {need.Join.Plug:0.#} mm every {pitch:0} mm are too few; every {need.Pitch:0} mm they carry what passes from sheet to sheet. Until then the two pieces do not work as one and the figures do not hold.", [need.Join.First, need.Join.Second], pitch, need.Pitch!.Value);
        }
        if (made.Joins.Length > 0)
        {
            yield return new(CautionKind.Weld, "The pieces count as one only where every weld has fused through both sheets. Peel a test piece of the same sheets before you weld the part.", []);
            yield return new(CautionKind.Safety, "Welding: shield eyes and skin from the arc; zinc and primer fumes are poisonous, so grind bare and air the place; no tank, line or sound-proofing near; extinguisher at hand and a fire watch for an hour after.", []);
        }
        yield return made.Made.Material.Family == "aluminium"
            ? new(CautionKind.Strength, "Beside a weld hardened or heat-treated aluminium keeps about half its strength, over some 25 mm each way (common practice); the figures are those of unwelded sheet.", [])
            : new(CautionKind.Strength, "Beside a weld the metal is softer or more brittle than the sheet, and what a press hardened by working it is lost there; the figures are those of unwelded sheet.", []);
        yield return new(CautionKind.Strength, "Buckling of thin walls, fatigue, holes, corrosion and how loads enter the part are not looked at.", []);
        yield return new(CautionKind.Safety, "A part that carries the vehicle, its steering, brakes, seats or belts is a matter for the local rules and a licensed engineer; these figures are for the talk with him.", []);
    }
}
