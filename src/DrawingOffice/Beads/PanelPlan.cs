using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>
/// What a panel asks to be cut, mm. The panel is free to draw in across its beads; where it is held fast, the sheet stretches by
/// <see cref="Rib.Stretch"/> instead and the blank is only as wide as the panel. What happens lies between the two.
/// </summary>
/// <param name="Allowances">By side, in the order of <see cref="PanelSide"/>; null for a raw edge.</param>
public sealed record PanelPlan(Panel Panel, Rib? Rib, ImmutableArray<HoleTooling> Holes, ImmutableArray<EdgeAllowance?> Allowances)
{
    /// <summary>All beads together.</summary>
    public double DrawIn => Rib is { } r ? Panel.Beads!.Count * r.Extra : 0;

    /// <summary>How far the crown's line draws the ends of a fading bead in, both ends together.</summary>
    public double EndsDrawIn => Rib is { } r && Panel.Beads!.Bead.RunOut is var e ? 2 * e * RunOut.Stretch(r.Depth, e) : 0;

    public double BlankWidth => Panel.Width + DrawIn + More(PanelSide.Left) + More(PanelSide.Right);

    public double BlankLength => Panel.Length + More(PanelSide.Bottom) + More(PanelSide.Top);

    /// <summary>Exact allowance of a side.</summary>
    public double More(PanelSide side) => Allowances[(int)side]?.Exact ?? 0;

    /// <summary>Where a place of the finished panel lies on the blank; between a bead's edges in proportion.</summary>
    public Vec2 OnBlank(Vec2 finished)
    {
        var x = More(PanelSide.Left) + finished.X;
        if (Rib is { } rib)
            for (var i = 0; i < Panel.Beads!.Count; i++)
                x += rib.Extra * Math.Clamp((finished.X - Panel.Beads.Place(i)) / rib.Chord + 0.5, 0, 1);
        return new(x, More(PanelSide.Bottom) + finished.Y);
    }

    /// <summary>Refuses what does not fit: beads over each other or the edge, holes on a bead, off the panel or into each other, an edge given twice, a hem or wired edge that takes the place of any of them.</summary>
    public static Parsed<PanelPlan> Of(Panel panel)
    {
        foreach (var (name, value) in new[] { ("thickness", panel.Thickness), ("width", panel.Width), ("length", panel.Length) })
            if (!(value > 0 && double.IsFinite(value))) return Refusal.Of($"panel, {name}", $"{value}", "give a length in mm, more than 0");
        if (!(panel.Clearance is >= 0 and <= 1)) return Refusal.Of("clearance", $"{panel.Clearance}", "give a share of the thickness from 0 to 1");
        if (panel.Beads is null && panel.Holes.IsEmpty && panel.Edges.IsEmpty) return Refusal.Of("panel", null, "give beads, flanged holes or edges");
        Rib? rib = null;
        if (panel.Beads is { } row)
        {
            var made = Rib.Of(row.Bead, panel.Thickness);
            if ((made.Refusal ?? PanelFit.Wrong(panel, row, made.Value)) is { } refusal) return refusal;
            rib = made.Value;
        }
        var holes = ImmutableArray.CreateBuilder<HoleTooling>();
        foreach (var hole in panel.Holes)
        {
            var tooling = HoleTooling.Of(hole, panel.Thickness);
            if (tooling.Refusal is { } refusal) return refusal;
            holes.Add(tooling.Value);
        }
        if (PanelFit.Wrong(panel, rib) is { } misplaced) return misplaced;
        var allowances = new EdgeAllowance?[4];
        foreach (var edge in panel.Edges)
        {
            var side = (int)edge.Side;
            if (allowances[side] is not null) return Refusal.Of("edges", $"{edge.Side}".ToLowerInvariant(), "give each side once");
            var allowance = edge.Wire is { } wire ? EdgeAllowances.Wired(wire, panel.Thickness) : EdgeAllowances.Hemmed(edge.Width, edge.InsideRadius, panel.Thickness, edge.Folds);
            if (allowance.Refusal is { } refusal) return refusal.In($"{edge.Side} edge".ToLowerInvariant());
            allowances[side] = allowance.Value;
        }
        if (PanelFit.Crowded(panel, rib) is { } crowded) return crowded;
        return new PanelPlan(panel, rib, holes.ToImmutable(), [.. allowances]);
    }
}
