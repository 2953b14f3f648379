using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>
/// A rail laid out: the web drawn flat with its edges as straights and arcs, the plan it stands on, and what hangs on its edges.
/// Only <see cref="Of"/> makes one, so a form met elsewhere is sound.
/// </summary>
public sealed class RailForm
{
    RailForm(Rail rail, PlanSheet plan, Mould lower, Mould upper, FoldEdge lowerFold, FoldEdge upperFold) =>
        (Rail, Plan, LowerMould, UpperMould, Lower, Upper) = (rail, plan, lower, upper, lowerFold, upperFold);

    public Rail Rail { get; }

    internal PlanSheet Plan { get; }

    /// <summary>Outside edges of the web, where the surfaces would meet.</summary>
    internal Mould LowerMould { get; }

    internal Mould UpperMould { get; }

    internal FoldEdge Lower { get; }

    internal FoldEdge Upper { get; }

    internal IEnumerable<FoldEdge> Folds => Upper.Shape is null ? [Lower] : [Lower, Upper];

    /// <summary>The section turns along the rail: the web is no longer a sheet that unrolls.</summary>
    public bool Twisted => Rail.Stations.Any(s => s.Turn != Rail.Stations[0].Turn);

    /// <summary>The web stays in one plane.</summary>
    public bool Flat => Plan.Count == 1 && !Twisted;

    /// <summary>All of it is straight or tapered: flat faces and straight folds, exact by faces.</summary>
    public bool Planar => Flat && Folds.All(f => f.Line.Steps.All(s => s.Curvature == 0));

    public static Parsed<RailForm> Of(Rail rail, BendMethod method)
    {
        if (RailCheck.Of(rail) is { } wrong) return wrong;
        var plan = RailPlan.Of(rail, method);
        if (!plan.Ok) return plan.Refusal!;
        var moulds = Moulds.Of(rail, plan.Value);
        if (!moulds.Ok) return moulds.Refusal!;
        var (lower, upper) = moulds.Value;
        var lowerFold = Edge(rail, plan.Value, lower, upper: false, method);
        if (!lowerFold.Ok) return lowerFold.Refusal!;
        var upperFold = Edge(rail, plan.Value, upper, upper: true, method);
        if (!upperFold.Ok) return upperFold.Refusal!;
        var form = new RailForm(rail, plan.Value, lower, upper, lowerFold.Value, upperFold.Value);
        return RailCheck.Room(form) is { } refusal ? refusal : form;
    }

    static Parsed<FoldEdge> Edge(Rail rail, PlanSheet plan, Mould mould, bool upper, BendMethod method)
    {
        if (upper && rail.Kind == RailKind.L) return new FoldEdge(true, mould.Course, mould.Marks, rail, plan, null);
        var angle = upper ? rail.UpperAngle : rail.LowerAngle;
        var lip = rail.Stations[0] is var s && (upper ? s.UpperLip : s.LowerLip) > 0 ? rail.Kind == RailKind.TopHat ? -1 : 1 : 0;
        var fold = method.For(angle, rail.InsideRadius, rail.Thickness);
        var lipFold = method.For(rail.LipAngle, rail.InsideRadius, rail.Thickness);
        if (!fold.Ok) return fold.Refusal!;
        if (!lipFold.Ok) return lipFold.Refusal!;
        var shape = new SideShape(angle, upper && rail.Kind == RailKind.Z ? -1 : 1, rail.LipAngle, lip, rail.InsideRadius, rail.Thickness, fold.Value.Length, lipFold.Value.Length);
        var line = mould.Line.Beside(upper ? -shape.Setback : shape.Setback);
        if (line is null) return Refusal.Of($"{(upper ? "upper" : "lower")} edge, ease", null, "every arc must be larger than the fold's radius and thickness");
        var (course, marks, noRoom) = line.Value.Rounded();
        return noRoom < 0 ? new FoldEdge(upper, course, marks, rail, plan, shape) : Moulds.NoRoom(rail, noRoom);
    }

    /// <summary>From the web's flat drawing to space, with the directions along the sheet, up the sheet and towards the eye there.</summary>
    /// <param name="x">Along the base line, mm: how far the section has turned.</param>
    internal Standing Stand(double x, Vec2 flat)
    {
        var (at, along, eye) = Plan.Stand(flat);
        var up = new Vec3(0, 0, 1);
        if (!Twisted) return new(at, along, up, eye);
        var turn = TurnAt(x);
        var datum = LowerMould.Course;
        var mark = Between.Read(Rail.Stations, s => s.At, LowerMould.Marks, x);
        var step = datum.Steps[datum.StepAt(mark)];
        var way = step.AlongAt(mark - datum.StartOf(datum.StepAt(mark)));
        var (axis, axisAlong, _) = Plan.Stand(datum.At(mark));
        var motion = Motion3.About(axis, axisAlong * way.X + up * way.Y, turn);
        return new(motion.Map(at), motion.Turn(along), motion.Turn(up), motion.Turn(eye));
    }

    /// <summary>Radians.</summary>
    internal double TurnAt(double x) => Between.Read(Rail.Stations, s => s.At, [.. Rail.Stations.Select(s => s.Turn - Rail.Stations[0].Turn)], x);

    /// <summary>Where a place of the flat beside an edge stands, at mid-thickness, and square to the sheet there (the side seen on the blank).</summary>
    internal (Vec3 At, Vec3 Square) Stand(FoldEdge edge, double along, in EdgePlace place, double flat)
    {
        var (o, e, turned) = edge.Shape?.At(flat, edge.FlangeAt(along)) ?? (flat, 0, 0);
        var standing = Stand(edge.BaseAt(along), place.At);
        var (outward, eye) = (standing.Along * place.Out.X + standing.Up * place.Out.Y, standing.Eye);
        var (s, c) = Math.SinCos(turned);
        return (standing.At + outward * o + eye * e, eye * c - outward * s);
    }
}

readonly record struct Standing(Vec3 At, Vec3 Along, Vec3 Up, Vec3 Eye);

/// <summary>An outside edge of the web on its flat drawing: corners, the course through them, and how far along it each station comes.</summary>
readonly record struct Mould(Traverse Line, Course Course, ImmutableArray<double> Marks);
