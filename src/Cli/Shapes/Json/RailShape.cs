using WitnessMark.DrawingOffice.Rails;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.FrontOffice.FoldRail;
using WitnessMark.Maths;

namespace WitnessMark.Cli.Shapes;

/// <summary>A rail as JSON: mm and radians, strains as shares.</summary>
static class RailShape
{
    public static object Of(RailResult made, IReadOnlyList<MeshBound> bounds, List<string> files) => new
    {
        made.Kit.Title,
        ThicknessMm = made.Made.Form.Rail.Thickness,
        Pieces = made.Kit.Pieces.Select(p => new
        {
            p.Name,
            p.Count,
            AreaMm2 = p.Area,
            Outline = p.Outline.Corners.Select(c => new { XMm = c.At.X, YMm = c.At.Y, c.Bulge }),
            Creases = p.Creases.Select(c => new { c.Id, Line = c.Line.Select(Place), AngleRad = c.Angle, InsideRadiusMm = c.InsideRadius, WidthMm = c.Width }),
            Openings = p.Openings.Select(Of),
        }),
        Strains = made.Made.Strains.Select(s => new
        {
            s.Edge,
            s.Stretch,
            s.Shrink,
            Spans = s.Spans.Select(x => new { FromMm = x.From, ToMm = x.To, HalfWay = x.Middle, FreeEdge = x.Edge, Lip = Finite(x.Lip), ChangeMm = x.Change }),
            Gaps = s.Gaps.Select(g => new { AtMm = g.At, WidthMm = g.Width, g.InBlank }),
        }),
        Ways = made.Made.Ways.Select((e, i) => new
        {
            e.Strain.Edge,
            Taken = e.Ways.IndexOf(made.Made.Chosen[i]) + 1,
            Ways = e.Ways.Select(w => new { Kind = w.Kind.ToString(), w.Reachable, w.Hours, WeldMm = w.WeldLength, w.Cuts, CutWidthMm = w.CutWidth, CutDepthMm = w.CutDepth, w.Words }),
        }),
        made.Kit.Steps,
        Mesh = bounds.Select(b => new { b.Face, OutlineMm = b.Outline, b.Flat.Stretch, b.Flat.Shrink, b.Flat.AreaChange, b.Flat.Rounds, b.Flat.Settled }),
        Cautions = made.Cautions.Select(c => new { Kind = c.Kind.ToString(), c.Words, c.About, Value = Finite(c.Value), Limit = Finite(c.Limit) }),
        Files = files,
    };

    static object Of(Opening opening) => opening switch
    {
        RoundHole h => new { h.Id, At = Place(h.At), DiameterMm = h.Diameter },
        Slot s => new { s.Id, At = Place(s.At), WidthMm = s.Width, LengthMm = s.Length, TurnRad = s.Turn },
        _ => new { opening.Id, AreaMm2 = opening.Edge.Area },
    };

    static object Place(Vec2 p) => new { XMm = p.X, YMm = p.Y };

    static double? Finite(double value) => double.IsFinite(value) ? value : null;
}
