using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>A panel with beads, flanged holes and stiffened edges, and all that is needed to make it.</summary>
public sealed record MadePanel(PanelPlan Plan, ToolRib? Tool, Stiffness? Stiffness, Kit Kit)
{
    /// <summary>Thickness of the plates by which a former is cut and checked, mm.</summary>
    const double Plate = 3;

    public static Parsed<MadePanel> Of(Panel panel, Material material)
    {
        var planned = PanelPlan.Of(panel);
        if (planned.Refusal is { } refusal) return refusal;
        var plan = planned.Value;
        ToolRib? tool = null;
        if (plan.Rib is { } rib)
        {
            var made = ToolRib.Of(rib, panel.Thickness, panel.Beads!.Bead.Length, material);
            if (made.Refusal is { } springs) return springs;
            tool = made.Value;
        }
        var kit = new Kit(panel.Title, [Blank(plan)])
        {
            Shape = plan.Rib is { } r ? BeadBodies.Panel(panel, r) : null,
            Formers = [.. tool is null ? [] : BeadTools(panel, tool), .. plan.Holes.SelectMany(h => new[] { HoleBodies.Punch(h), HoleBodies.Die(h) })],
            Steps = [.. PanelWords.Steps(plan)],
            Listings = [.. PanelWords.Listings(plan, tool, material)],
            Cautions = [.. PanelCautions.Of(plan, tool, material)],
        };
        var stiffness = plan.Rib is { } b ? Beads.Stiffness.Of(b, panel.Thickness, panel.Beads!.Count == 1 ? panel.Width : panel.Beads.Pitch) : null;
        return new MadePanel(plan, tool, stiffness, kit);
    }

    static Piece Blank(PanelPlan plan)
    {
        var panel = plan.Panel;
        return new("blank", panel.Thickness, Loop.Rectangle(plan.BlankWidth, plan.BlankLength))
        {
            Witnesses = [.. BeadLines(plan), .. EdgeLines(plan), .. plan.Holes.SelectMany(h => new[]
            {
                new Witness($"{h.Wanted.Name}: cut {h.ByLength:0.0#} mm after the beads", Circle(plan.OnBlank(h.Wanted.At), h.ByLength / 2)),
                new Witness("", [plan.OnBlank(h.Wanted.At)]),
            })],
            Notes = plan.DrawIn > 0
                ? [$"Wider than the panel by {plan.DrawIn:0.0#} mm that {panel.Beads!.Whole} {(panel.Beads.Count == 1 ? "draws" : "draw")} in when the edges are free; where they are held, less.", $"The draw-in is full only beside {panel.Beads.Whole}: trim the ends."]
                : [],
        };
    }

    static IEnumerable<Witness> BeadLines(PanelPlan plan)
    {
        if (plan.Rib is not { } rib) yield break;
        var (row, panel) = (plan.Panel.Beads!, plan.Panel);
        var (from, to) = ((panel.Length - row.Bead.Length) / 2, (panel.Length + row.Bead.Length) / 2);
        for (var i = 0; i < row.Count; i++)
        {
            foreach (var (words, x) in new[] { ("", -rib.Chord / 2), (row.Count == 1 ? row.Name : $"bead {i + 1}", 0), ("", rib.Chord / 2) })
                yield return new(words, [plan.OnBlank(new(row.Place(i) + x, from)), plan.OnBlank(new(row.Place(i) + x, to))]);
        }
    }

    static IEnumerable<Witness> EdgeLines(PanelPlan plan)
    {
        var (left, right, bottom, top) = (plan.More(PanelSide.Left), plan.BlankWidth - plan.More(PanelSide.Right), plan.More(PanelSide.Bottom), plan.BlankLength - plan.More(PanelSide.Top));
        foreach (var edge in plan.Panel.Edges)
        {
            ImmutableArray<Vec2> line = edge.Side switch
            {
                PanelSide.Left => [new(left, 0), new(left, plan.BlankLength)],
                PanelSide.Right => [new(right, 0), new(right, plan.BlankLength)],
                PanelSide.Bottom => [new(0, bottom), new(plan.BlankWidth, bottom)],
                _ => [new(0, top), new(plan.BlankWidth, top)],
            };
            yield return new("finished edge", line);
        }
    }

    static ImmutableArray<Vec2> Circle(Vec2 at, double radius)
    {
        var round = Loop.Circle(at, radius).Flatten(0.05);
        return round.Add(round[0]);
    }

    static IEnumerable<Former> BeadTools(Panel panel, ToolRib tool)
    {
        var (bead, kind, t) = (panel.Beads!.Bead, panel.Beads.Name, panel.Thickness);
        // The edge arcs of the die hollow out by the play; more than their radius cannot be cut.
        var play = Math.Min(panel.Clearance * t, tool.Edge.Value);
        Former Made(string name, PrintRoom.Pictorial.Body shape, double off, double level, string words) =>
            new(name, "18 mm plywood laid up or hard wood for a few, mild steel for many; edges hard and smooth", shape, words)
            {
                Templates = [new($"{name} section", Plate, Loop.Of(BeadBodies.Section(tool.Middle, off, level).AsSpan())) { Notes = ["Cut and file to this; it checks the former across at full depth."] }],
            };
        yield return Made($"{kind} former", BeadBodies.Former(bead, tool.Middle, t), -t / 2, -BeadBodies.Rim, $"Goes under the sheet into the hollow of the {kind}.");
        yield return Made($"{kind} die", BeadBodies.Die(bead, tool.Middle, t, play), t / 2 + play, tool.Middle.Depth + BeadBodies.Rim, "Goes over the sheet; print or cut it with its groove up.");
    }
}
