using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.FrontOffice.CutBlank;
using WitnessMark.Maths;

namespace WitnessMark.Cli.Drawing;

/// <summary>A blank as JSON: mm and radians.</summary>
static class BlankShape
{
    public static object Of(CutResult cut, List<string> files) => new
    {
        cut.Tree.Title,
        ThicknessMm = cut.Tree.Thickness,
        WidthMm = cut.Part.Bounds.Width,
        HeightMm = cut.Part.Bounds.Height,
        AreaMm2 = cut.Blank.Area,
        cut.Blank.AreaImbalance,
        Outline = cut.Blank.Outline.Corners.Select(c => new { XMm = c.At.X, YMm = c.At.Y, c.Bulge }),
        Bends = cut.Blank.BendLines.Select(b => new
        {
            b.Id,
            From = Place(b.MiddleFrom),
            To = Place(b.MiddleTo),
            AngleRad = b.Angle,
            InsideRadiusMm = b.InsideRadius,
            AllowanceMm = b.Allowance.Length,
            AllowanceStdMm = b.Allowance.Std,
            b.Allowance.NeutralAxis,
            b.Allowance.Method,
            b.Allowance.Validity,
        }),
        Openings = cut.Blank.Openings.Select(Of),
        Order = cut.Order is { } order ? new { order.Possible, Steps = order.Steps.Select(s => new { s.Bend, s.Clamped, s.UpperSideUp, AngleRad = s.Angle, s.Words }) } : null,
        Cautions = cut.Cautions.Select(c => new { Kind = c.Kind.ToString(), c.Words, c.About, Value = Finite(c.Value), Limit = Finite(c.Limit) }),
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
