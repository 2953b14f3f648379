using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Beads;

/// <summary>Whether beads and holes find room on their panel.</summary>
static class PanelFit
{
    /// <summary>More than any panel has.</summary>
    const int MostBeads = 200;

    /// <summary>Rounding of typed figures, mm.</summary>
    const double Slack = 1e-9;

    public static Refusal? Wrong(Panel panel, BeadRow row, Rib rib)
    {
        if (row.Count is < 1 or > MostBeads) return Refusal.Of("beads, count", $"{row.Count}", $"give 1 to {MostBeads}");
        if (row.Count > 1 && !(row.Pitch >= rib.Chord - Slack)) return Refusal.Of("beads, pitch", $"{row.Pitch:0.##} mm", $"a bead takes {rib.Chord:0.##} mm of the panel; give at least that");
        if (row.Count > 1 && rib.OneSided) return Refusal.Of("beads, count", $"{row.Count}", "a panel has one joggle across it");
        var (first, last) = (row.Place(0) - rib.Chord / 2, row.Place(row.Count - 1) + rib.Chord / 2);
        if (!(first >= -Slack && last <= panel.Width + Slack))
            return Refusal.Of("beads", $"from {first:0.##} to {last:0.##} mm", $"they must lie within the panel's {panel.Width:0.##} mm");
        if (!(row.Bead.Length <= panel.Length + Slack)) return Refusal.Of("bead, length", $"{row.Bead.Length:0.##} mm", $"the panel is {panel.Length:0.##} mm long");
        if (row.Bead.RunOut == 0 && row.Bead.Length < panel.Length - Slack)
            return Refusal.Of("bead, run-out", "0", $"give the length over which it fades, or let it run the panel's whole {panel.Length:0.##} mm");
        return null;
    }

    public static Refusal? Wrong(Panel panel, Rib? rib)
    {
        for (var i = 0; i < panel.Holes.Length; i++)
        {
            var (hole, reach) = (panel.Holes[i], Reach(panel, panel.Holes[i]));
            if (hole.At.X < reach || hole.At.X > panel.Width - reach || hole.At.Y < reach || hole.At.Y > panel.Length - reach)
                return Refusal.Of($"flanged hole {hole.Name}, at", $"{hole.At.X:0.##}, {hole.At.Y:0.##}", $"its bend takes {reach:0.##} mm from its middle, which must lie on the panel");
            if (rib is not null && OnBead(panel, rib, hole.At, reach) is { } bead)
                return Refusal.Of($"flanged hole {hole.Name}, at", $"{hole.At.X:0.##}, {hole.At.Y:0.##}", $"its bend runs into {panel.Beads!.Named(bead)}; move it into the flat");
            for (var k = 0; k < i; k++)
                if (hole.At.DistanceTo(panel.Holes[k].At) < reach + Reach(panel, panel.Holes[k]))
                    return Refusal.Of($"flanged hole {hole.Name}, at", $"{hole.At.X:0.##}, {hole.At.Y:0.##}", $"it runs into {panel.Holes[k].Name}; move them apart");
        }
        return null;
    }

    /// <summary>Hems and rolls against the panel, its beads and its holes; for edges that can be made.</summary>
    public static Refusal? Crowded(Panel panel, Rib? rib)
    {
        foreach (var edge in panel.Edges)
        {
            var (takes, upright) = (edge.Takes(panel.Thickness), edge.Side is PanelSide.Left or PanelSide.Right);
            var (across, size) = upright ? ("wide", panel.Width) : ("long", panel.Length);
            var opposite = panel.Edges.FirstOrDefault(e => e.Side != edge.Side && (e.Side is PanelSide.Left or PanelSide.Right) == upright);
            if (takes + (opposite?.Takes(panel.Thickness) ?? 0) > size + Slack)
                return Wrong($"it takes {takes:0.##} mm{(opposite is null ? "" : $" and the {opposite.Name} {opposite.Takes(panel.Thickness):0.##} mm")} of a panel {size:0.##} mm {across}; make it narrower");
            for (var i = 0; rib is not null && i < panel.Beads!.Count; i++)
                if (Free(panel, edge.Side, new(panel.Beads.Place(i), panel.Length / 2), rib.Chord / 2, panel.Beads.Bead.Length / 2) is var free && free < takes - Slack)
                    return Wrong($"it takes {takes:0.##} mm of the panel and {panel.Beads.Named(i)} begins {free:0.##} mm from that edge; make it narrower or the {panel.Beads.Name} clear of it");
            foreach (var hole in panel.Holes)
                if (Reach(panel, hole) is var reach && Free(panel, edge.Side, hole.At, reach, reach) is var free && free < takes - Slack)
                    return Wrong($"it takes {takes:0.##} mm of the panel and the bend of flanged hole {hole.Name} begins {free:0.##} mm from that edge; make it narrower or move the hole");

            Refusal Wrong(string wanted) => Refusal.Of(edge.Name, $"{edge.Wire ?? edge.Width:0.##} mm", wanted);
        }
        return null;
    }

    /// <summary>From a side of the panel to what stands round a place, half its width and height given, mm.</summary>
    static double Free(Panel panel, PanelSide side, Vec2 at, double halfWide, double halfHigh) => side switch
    {
        PanelSide.Left => at.X - halfWide,
        PanelSide.Right => panel.Width - at.X - halfWide,
        PanelSide.Bottom => at.Y - halfHigh,
        _ => panel.Length - at.Y - halfHigh,
    };

    /// <summary>From the middle of a hole to where the panel is flat, mm.</summary>
    public static double Reach(Panel panel, FlangedHole hole) => hole.Inside / 2 + panel.Thickness + hole.Radius;

    static int? OnBead(Panel panel, Rib rib, Vec2 at, double reach)
    {
        var row = panel.Beads!;
        for (var i = 0; i < row.Count; i++)
            if (Math.Abs(at.X - row.Place(i)) < reach + rib.Chord / 2 && Math.Abs(at.Y - panel.Length / 2) < reach + row.Bead.Length / 2) return i;
        return null;
    }
}
