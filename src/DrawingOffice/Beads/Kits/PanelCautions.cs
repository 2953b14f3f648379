using WitnessMark.DrawingOffice.Forming;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>What to beware of in a panel, with its numbers.</summary>
static class PanelCautions
{
    public static IEnumerable<Caution> Of(PanelPlan plan, ToolRib? tool, Material material)
    {
        var bears = UniformElongation.Of(material);
        if (plan.Rib is { } rib && tool is not null)
            foreach (var caution in OfBeads(plan, rib, tool, material, bears)) yield return caution;
        foreach (var hole in plan.Holes)
            foreach (var caution in OfHole(plan, hole, material, bears)) yield return caution;
        if (YieldRange.Guess(material) is { } guess && plan.Rib is not null) yield return guess;
        yield return new(CautionKind.Safety, "Fresh edges cut: gloves on. Rolls, punches and presses crush; fingers stay out, and long hair and sleeves are tied.", []);
    }

    static IEnumerable<Caution> OfBeads(PanelPlan plan, Rib rib, ToolRib tool, Material material, double? bears)
    {
        var (row, bead) = (plan.Panel.Beads!, plan.Panel.Beads!.Bead);
        var one = row.Count == 1;
        var together = RunOut.Together(rib.Stretch, RunOut.Stretch(rib.Depth, bead.RunOut));
        if (bears is { } u && together > u)
            yield return new(CautionKind.Stretch,
                $"Held fast, the sheet would stretch {100 * rib.Stretch:0.0} % across {(one ? row.Whole : "a bead")}{(bead.RunOut > 0 ? $" and up to {100 * together:0.0} % where it fades" : "")}; {material.Short()} bears about {100 * u:0} % before it necks. Let the edges draw in, {(bead.RunOut > 0 ? $"fade {row.Whole} over a longer way, " : "")}or make {(one ? "it" : "them")} shallower or wider.",
                [], together, u);
        if (bead.RunOut > 0 && plan.EndsDrawIn > 0.1)
            yield return new(CautionKind.Shrink, $"The fading ends pull {plan.EndsDrawIn:0.0} mm more sheet along {(one ? row.Whole : "each bead")} than the flat {(one ? "beside it" : "between them")} has: the panel bows or oil-cans there unless it is shrunk or hammered flat.", [], plan.EndsDrawIn);
        yield return new(CautionKind.Strength, $"{(one ? $"A {row.Name} stiffens" : "Beads stiffen")} a panel one way only, against bending that would bend {row.Whole}; the other way it is no stiffer than flat sheet.", []);
        if (bead.Kind == BeadKind.Joggle) yield return new(CautionKind.AllowanceRange, "Beyond a joggle the panel lies on another level: what is fixed there moves with it.", []);
        if (tool.Middle.Turn >= Math.PI / 2 - 1e-9 && rib.Turn < Math.PI / 2 - 1e-9)
            yield return new(CautionKind.OutsideRange, "Spring-back asks for slopes steeper than upright, from which the tool cannot be drawn: set the corners sharper by hand after the first pass.", []);
        var elongation = material.Elongation.Low ?? material.Elongation.High;
        var sharpest = Math.Min(rib.Edge, rib.Crown) - plan.Panel.Thickness / 2;
        if (elongation is { } e && MinimumRadius.FromElongation(e, plan.Panel.Thickness) is var least && sharpest < least)
            yield return new(CautionKind.SharpRadius, $"An inside radius of {sharpest:0.0#} mm is sharper than the {least:0.0#} mm that an elongation of {e:0} % is sure of (a cautious rule): try a strip.", [], sharpest, least);
    }

    static IEnumerable<Caution> OfHole(PanelPlan plan, HoleTooling hole, Material material, double? bears)
    {
        var (panel, name) = (plan.Panel, hole.Wanted.Name);
        if (bears is { } u && hole.Stretch > u)
            yield return new(CautionKind.Stretch,
                $"Hole {name}: its edge stretches {100 * hole.Stretch:0.0} %; {material.Short()} bears about {100 * u:0} % before it necks. A drilled, rounded and polished edge goes somewhat further than a punched one; make the flange lower or anneal.",
                [name], hole.Stretch, u);
        if (hole.Wanted.Height > HoleTooling.SplitsOver * panel.Thickness)
            yield return new(CautionKind.Stretch,
                $"Hole {name}: a flange {hole.Wanted.Height:0.0#} mm high is more than {HoleTooling.SplitsOver} thicknesses; such flanges tend to split from any nick in the edge when the hole is small.", [name], hole.Wanted.Height, HoleTooling.SplitsOver * panel.Thickness);
        foreach (var other in plan.Holes.TakeWhile(h => h != hole))
        {
            var between = hole.Wanted.At.DistanceTo(other.Wanted.At) - (hole.Die + other.Die) / 2;
            if (between < HoleTooling.Apart * panel.Thickness)
                yield return new(CautionKind.HoleNearBend, $"Between the flanges of {name} and {other.Wanted.Name} stand {between:0.0} mm; under {HoleTooling.Apart:0} thicknesses, {HoleTooling.Apart * panel.Thickness:0.0} mm, the sheet between is pulled out of shape.", [name, other.Wanted.Name], between, HoleTooling.Apart * panel.Thickness);
        }
        yield return new(CautionKind.Strength, $"Hole {name}: a lightening hole takes metal out of a panel that may carry load; in a structural part keep to what the maker cut.", [name]);
    }
}
