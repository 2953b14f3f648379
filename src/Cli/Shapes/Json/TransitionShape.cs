using WitnessMark.DrawingOffice.Transitions;
using WitnessMark.Maths;

namespace WitnessMark.Cli.Shapes;

/// <summary>A laid-out shape as JSON: mm and radians.</summary>
static class TransitionShape
{
    public static object Of(Made made, List<string> files) => new
    {
        made.Kit.Title,
        ThicknessMm = made.Asked.Thickness,
        Accuracy = new { made.Accuracy.Triangles, ChordMm = made.Accuracy.Chord, ShortMm = made.Accuracy.Short, RefoldMm = made.Accuracy.Refold },
        Pieces = made.Kit.Pieces.Select(p => new
        {
            p.Name,
            ThicknessMm = p.Thickness,
            p.Count,
            p.Paper,
            AreaMm2 = p.Area,
            Outline = p.Outline.Corners.Select(c => new { XMm = c.At.X, YMm = c.At.Y, c.Bulge }),
            Openings = p.Openings.Select(o => new { o.Id, AreaMm2 = o.Edge.Area, Outline = o.Edge.Corners.Select(c => new { XMm = c.At.X, YMm = c.At.Y, c.Bulge }) }),
            Bends = p.Creases.Select(c => new { c.Id, AngleRad = c.Angle, Line = c.Line.Select(Place) }),
            Lines = p.Witnesses.Select(w => new { w.Words, Line = w.Line.Select(Place) }),
        }),
        Listings = made.Kit.Listings.Select(l => new { l.Title, l.Heads, l.Rows }),
        Seams = made.Kit.Seams.Select(s => new { s.Id, s.Between, Kind = s.Kind.ToString(), LengthMm = s.Length, s.Words }),
        made.Kit.Steps,
        Files = files,
        Cautions = made.Kit.Cautions.Select(c => new { Kind = c.Kind.ToString(), c.Words }),
    };

    static object Place(Vec2 p) => new { XMm = p.X, YMm = p.Y };
}
