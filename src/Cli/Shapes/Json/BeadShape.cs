using WitnessMark.DrawingOffice.Beads;

namespace WitnessMark.Cli.Shapes;

/// <summary>A panel as JSON: mm, radians, shares.</summary>
static class BeadShape
{
    public static object Of(MadePanel made, List<string> files)
    {
        var (plan, panel) = (made.Plan, made.Plan.Panel);
        return new
        {
            panel.Title,
            BlankWidthMm = plan.BlankWidth,
            BlankLengthMm = plan.BlankLength,
            DrawInMm = plan.DrawIn,
            Bead = plan.Rib is { } rib && made is { Tool: { } tool, Stiffness: { } stiff } ? new
            {
                DevelopedMm = rib.Developed,
                ChordMm = rib.Chord,
                ExtraMm = rib.Extra,
                StretchHeld = rib.Stretch,
                StretchAtRunOut = RunOut.Together(rib.Stretch, RunOut.Stretch(rib.Depth, panel.Beads!.Bead.RunOut)),
                ToolDepthMm = tool.Middle.Depth,
                ToolSlopeRad = tool.Middle.Turn,
                ToolEdgeRadiusMm = tool.Edge,
                ToolCrownRadiusMm = tool.Crown,
                PlainMm3 = stiff.Plain,
                AlongMm3 = stiff.Along,
                AcrossMm3 = stiff.Across,
                Order = panel.Beads.CentreOut.Select(i => i + 1),
                PlacesOnBlankMm = Enumerable.Range(0, panel.Beads.Count).Select(i => plan.OnBlank(new(panel.Beads.Place(i), 0)).X),
            } : null,
            Holes = plan.Holes.Select(h => new
            {
                h.Wanted.Name,
                XMm = plan.OnBlank(h.Wanted.At).X,
                YMm = plan.OnBlank(h.Wanted.At).Y,
                CutByLengthMm = h.ByLength,
                CutByVolumeMm = h.ByVolume,
                EdgeStretch = h.Stretch,
                EdgeThicknessMm = h.EdgeThickness,
                PunchMm = h.Punch,
                DieMm = h.Die,
            }),
            Edges = panel.Edges.Select(e => new { Side = $"{e.Side}".ToLowerInvariant(), ExactMm = plan.Allowances[(int)e.Side]!.Exact, ShopMm = plan.Allowances[(int)e.Side]!.Shop }),
            made.Kit.Steps,
            Cautions = made.Kit.Cautions.Select(c => c.Words),
            Files = files,
        };
    }
}
