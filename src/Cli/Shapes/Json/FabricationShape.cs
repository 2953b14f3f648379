using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.FrontOffice.SetJoint;
using WitnessMark.FrontOffice.SplitPressing;
using WitnessMark.Maths;

namespace WitnessMark.Cli.Shapes;

/// <summary>Splits and settings as JSON: mm and radians.</summary>
static class FabricationShape
{
    public static object Of(SplitResult made, int chosen, IReadOnlyList<string> files) => new
    {
        made.Model.Pressing.Title,
        ThicknessMm = made.Model.Pressing.Thickness,
        OffPlaneMm = made.Model.OffPlane,
        Joints = made.Model.Joints.Select(j => new { j.Name, LengthMm = j.Length, BendRad = j.Bend, SettingAngleRad = j.SettingAngle, StdRad = j.Std, Wish = j.Wish.ToString() }),
        made.Answer.Proven,
        BoundMinutes = made.Answer.Bound,
        made.Answer.Steps,
        made.Answer.Blanks,
        Splits = made.Answer.Choices.Select((c, i) => Choice(made.Model, c, made.Kits[i])),
        Printed = chosen + 1,
        Files = files,
    };

    static object Choice(FaceModel model, SplitChoice c, Kit kit) => new
    {
        Minutes = c.Work,
        WeldLengthMm = c.WeldLength,
        Folded = c.Folded.Select(j => model.Joints[j].Name),
        Pieces = c.Pieces.Select(p => new
        {
            p.Name,
            Faces = p.Faces.Select(f => model.Faces[f].Name),
            Bends = p.Steps.Select(s => new { Joint = model.Joints[s.Joint].Name, InVice = s.Fold is null, s.Fold?.Words }),
            BlankAreaMm2 = p.Blank.Area,
            Outline = p.Blank.Outline.Corners.Select(k => new { XMm = k.At.X, YMm = k.At.Y, k.Bulge }),
        }),
        c.Reasons,
        Kit = Of(kit),
    };

    public static object Of(SettingResult made, IReadOnlyList<string> files) => new
    {
        made.Kit.Title,
        Sine = made.Sine is { } s ? new
        {
            WantedRad = s.Wanted,
            BarMm = s.Bar,
            HeightMm = s.Exact,
            BlocksMm = s.Stack.Blocks,
            StackMm = s.Stack.Height.Value,
            StackStdMm = s.Stack.Height.Std,
            AngleRad = s.Angle.Value,
            AngleStdRad = s.Angle.Std,
        } : null,
        Kit = Of(made.Kit),
        Files = files,
    };

    static object Of(Kit kit) => new
    {
        Pieces = kit.Pieces.Concat(kit.Formers.SelectMany(f => f.Templates)).Select(p => new
        {
            p.Name,
            ThicknessMm = p.Thickness,
            p.Count,
            AreaMm2 = p.Area,
            Outline = p.Outline.Corners.Select(k => new { XMm = k.At.X, YMm = k.At.Y, k.Bulge }),
            Openings = p.Openings.Select(o => new { o.Id, AreaMm2 = o.Edge.Area, Outline = o.Edge.Corners.Select(k => new { XMm = k.At.X, YMm = k.At.Y, k.Bulge }) }),
            Bends = p.Creases.Select(k => new { k.Id, AngleRad = k.Angle, k.InsideRadius, Line = k.Line.Select(Place) }),
        }),
        Tools = kit.Formers.Select(f => new { f.Name, f.Words, VolumeMm3 = f.Shape.Volume }),
        Welds = kit.Seams.Select(s => new { s.Id, s.Between, Kind = s.Kind.ToString(), LengthMm = s.Length, SizeMm = s.Size, RootGapMm = s.RootGap, s.Count, s.Words }),
        Listings = kit.Listings.Select(l => new { l.Title, l.Heads, l.Rows }),
        kit.Steps,
        Cautions = kit.Cautions.Select(c => new { Kind = c.Kind.ToString(), c.Words }),
    };

    static object Place(Vec2 p) => new { XMm = p.X, YMm = p.Y };
}
