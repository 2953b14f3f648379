using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Forming;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>Figures and steps of a panel in words.</summary>
static class PanelWords
{
    /// <summary>Depth that a sheet takes at one pass of rolls, hammer or press before it is let settle, in thicknesses (common practice).</summary>
    public const double PerPass = 3;

    public static int Passes(Rib rib, double thickness) => Math.Max(1, (int)Math.Ceiling(rib.Depth / (PerPass * thickness) - 1e-9));

    public static string Mm(double x) => $"{x:0.0#} mm";

    public static string Percent(double share) => $"{100 * share:0.0} %";

    public static IEnumerable<Listing> Listings(PanelPlan plan, ToolRib? tool, Material material)
    {
        var panel = plan.Panel;
        if (plan.Rib is { } rib && tool is not null)
        {
            var stiff = Stiffness.Of(rib, panel.Thickness, panel.Beads!.Count == 1 ? panel.Width : panel.Beads.Pitch);
            var (row, name) = (panel.Beads!, panel.Beads!.Name);
            yield return new(name, ["what", "value"],
            [
                [$"sheet in {(row.Count == 1 ? row.Whole : "one bead")}", Mm(rib.Developed)],
                ["flat it stands on", Mm(rib.Chord)],
                [row.Count == 1 ? "draws in" : "draws in, each bead", Mm(rib.Extra)],
                [row.Count == 1 ? "draws in, to each side" : "draws in, whole row", row.Count == 1 ? Mm(plan.DrawIn / 2) : $"{Mm(plan.DrawIn)}: {Mm(plan.DrawIn / 2)} each side"],
                ["stretch across if held", Percent(rib.Stretch)],
                ["stretch at the run-outs if held, at most", Percent(RunOut.Together(rib.Stretch, RunOut.Stretch(rib.Depth, row.Bead.RunOut)))],
                [$"{material.Short()} bears before it necks", UniformElongation.Of(material) is { } u ? $"about {100 * u:0} %" : "not known"],
                [$"stiffness with {row.Whole} as {(row.Count == 1 ? "a rib" : "ribs")}, of the flat sheet's", $"{stiff.Along / stiff.Plain:0.#} times"],
                ["stiffness the other way", $"{stiff.Across / stiff.Plain:0.00} times"],
            ]);
            yield return new($"{name} tool", ["what", "wanted", "on the tool"],
            [
                ["depth", Mm(rib.Depth), Mm(tool.Middle.Depth)],
                ["slope", $"{rib.Turn * 180 / Math.PI:0.0}°", $"{tool.Middle.Turn * 180 / Math.PI:0.0}°"],
                ["inside radius at the edge", Mm(rib.Edge - panel.Thickness / 2), Range(tool.Edge)],
                ["inside radius at the crown", Mm(rib.Crown - panel.Thickness / 2), Range(tool.Crown)],
                ["play between former and die beyond the sheet", "", Mm(panel.Clearance * panel.Thickness)],
            ]);
        }
        if (!plan.Holes.IsEmpty)
            yield return new("flanged holes", ["hole", "cut", "by volume", "edge stretches", "edge left", "punch", "die"],
                [.. plan.Holes.Select(h => ImmutableArray.Create(h.Wanted.Name, Mm(h.ByLength), Mm(h.ByVolume), Percent(h.Stretch), Mm(h.EdgeThickness), Mm(h.Punch), Mm(h.Die)))]);
        if (panel.Edges.Length > 0)
            yield return new("edges", ["side", "cut beyond the edge", "by the shop rule", "rule"],
                [.. panel.Edges.Select(e => (e.Side, plan.Allowances[(int)e.Side]!)).Select(x => ImmutableArray.Create($"{x.Side}".ToLowerInvariant(), Mm(x.Item2.Exact), Mm(x.Item2.Shop), x.Item2.Rule))]);
    }

    public static IEnumerable<string> Steps(PanelPlan plan)
    {
        var panel = plan.Panel;
        yield return $"Cut the blank {Mm(plan.BlankWidth)} by {Mm(plan.BlankLength)} and break its edges.";
        if (!plan.Holes.IsEmpty && plan.Rib is not null) yield return $"Mark the flanged holes but cut and flange them after {panel.Beads!.Whole}: {string.Join(", ", plan.Holes.Select(h => $"{h.Wanted.Name} {Mm(h.ByLength)}"))}.";
        if (plan.Rib is { } rib)
        {
            var passes = Passes(rib, panel.Thickness);
            var (row, one) = (panel.Beads!, panel.Beads!.Count == 1);
            yield return $"Scribe the middle of {(one ? row.Whole : "each bead")} on the blank, where the drawing shows it and not where it will lie in the finished panel.";
            yield return $"Make one {row.Name} in a strip of the same sheet; correct the tool until its depth is {Mm(rib.Depth)}.";
            if (!one) yield return $"Raise the beads from the middle outwards: {string.Join(", ", row.CentreOut.Select(i => $"{i + 1}"))}, counted from the left.";
            if (passes > 1) yield return $"Go over the whole {(one ? row.Name : "row")} in {passes} passes of about {Mm(rib.Depth / passes)}{(one ? "" : ", each in the same order")}.";
            yield return $"Let the free edges slide; clamp only what must lie still. Flatten {(one ? $"beside {row.Whole}" : "between the beads")} with a slapper, never on {(one ? "it" : "them")}.";
        }
        foreach (var h in plan.Holes) yield return $"Hole {h.Wanted.Name}: cut {Mm(h.ByLength)}, smooth the edge round and bright, burr towards the punch, press the punch through.";
        foreach (var e in panel.Edges)
            yield return e.Wire is { } wire
                ? $"Turn the {$"{e.Side}".ToLowerInvariant()} edge up {Mm(plan.More(e.Side))} from the finished edge, lay in the {Mm(wire)} wire and close it from the middle to the ends."
                : $"Fold the {$"{e.Side}".ToLowerInvariant()} edge {(e.Folds == 2 ? "twice" : "once")} for a hem of {Mm(e.Width)}.";
        if (plan.Rib is not null) yield return "Trim to size: what a panel draws in depends on how it was held.";
    }

    static string Range(Spread s) => $"{Mm(s.Value)} ({s.Low:0.0#} to {s.High:0.0#})";
}
