using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>The block that a flange is hammered down on: it fills the rail between web and flanges, so its edge is the flange's inside.</summary>
static class RailFormer
{
    /// <param name="towards">The side of the web it lies on: 1 towards the eye.</param>
    public static Former Of(RailForm form, int towards)
    {
        var rail = form.Rail;
        var height = form.Folds.Where(f => f.Shape!.Towards == towards).Max(f => rail.Stations.Max(s => f.Upper ? s.Upper : s.Lower)) - rail.Thickness;
        double Inset(FoldEdge edge) => edge.Shape is { } s && s.Towards == towards ? Setback.Inside(s.Angle, s.InsideRadius) : 0;
        double Lean(FoldEdge edge) => edge.Shape is { } s && s.Towards == towards ? height / Math.Tan(s.Angle) : 0;
        var sections = new List<(Vec3 LowFoot, Vec3 HighFoot, Vec3 LowHead, Vec3 HighHead)>();
        foreach (var x in RailBody.Places(form))
        {
            (Vec3 Foot, Vec3 Head) Ends(FoldEdge edge)
            {
                var place = edge.Place(edge.AlongAt(x));
                var standing = form.Stand(x, place.At);
                var outward = standing.Along * place.Out.X + standing.Up * place.Out.Y;
                var foot = standing.At + outward * Inset(edge) + standing.Eye * (towards * rail.Thickness / 2);
                return (foot, foot + outward * Lean(edge) + standing.Eye * (towards * height));
            }
            var ((lowFoot, lowHead), (highFoot, highHead)) = (Ends(form.Lower), Ends(form.Upper));
            sections.Add(towards > 0 ? (lowFoot, highFoot, lowHead, highHead) : (highFoot, lowFoot, highHead, lowHead));
        }
        var outline = RailOutline.Closed(RailOutline.Beside(form.Lower, _ => Inset(form.Lower), false, []), RailOutline.Beside(form.Upper, _ => Inset(form.Upper), false, []));
        return new($"former{(towards > 0 ? "" : " for the back")}", "hardwood, or 18 mm plywood in layers, or steel plate for more than a pair", Loft.Block(sections),
            $"Round the edges that the flanges are folded over to {rail.InsideRadius:0.0#} mm. Clamp the web between the former and a plate and hammer the flange down a little at a time from the middle of each curve to its ends. The flange springs back: leave the former's side 2° to 3° under for mild steel (common practice), or fold a test strip and see.")
        {
            Templates = [new($"former outline{(towards > 0 ? "" : " back")}", rail.Thickness, outline) { Notes = ["Outline of the former at the web; not a piece of the rail."] }],
        };
    }
}
