using WitnessMark.DrawingOffice.Survey.Solid.Network;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Survey.Solid;

/// <summary>Turns a plan in space into lines to draw it from.</summary>
static class WireframeMaker
{
    public static Wireframe Of(SolidPlan plan)
    {
        var layout = plan.Solver.Layout;
        Dictionary<string, SolidPlaced> placed = plan.Features.ToDictionary(f => f.Id);
        var of = Enumerable.Range(0, layout.Features.Length).ToLookup(layout.Kind);
        return new Wireframe(
            [.. of[SolidKind.Edge].Select(i => Edge(plan, i))],
            [.. of[SolidKind.Hole].Select(i => placed[layout.Features[i].Id]).Where(h => h.Direction.Length > 0).Select(h => new WireCircle(h.Id, h.At, h.Direction, plan.Fit.X[layout.SizeOf(layout.IndexOf(h.Id))] / 2, h.Loose))],
            [.. of[SolidKind.Plane].Select(i => Face(plan, i))],
            [.. of[SolidKind.Cylinder].Select(i => Tube(plan, i))]);
    }

    static WireEdge Edge(SolidPlan plan, int edge)
    {
        var (layout, x) = (plan.Solver.Layout, plan.Fit.X);
        var f = plan.Of(layout.Features[edge].Id);
        if (layout.IsCornered(edge))
        {
            var (a, b) = layout.Corners(edge);
            return new WireEdge(f.Id, layout.Place(a, x), layout.Place(b, x), f.Loose);
        }
        int[] sides = layout.Features[edge].From is null ? layout.On(edge) is >= 0 and var on ? [on] : [] : [layout.Corners(edge).From, layout.Corners(edge).To];
        var (from, to) = Span(plan, f, [.. sides.SelectMany(s => SolidPlanMaker.Beside(plan.Solver, s)), .. SolidPlanMaker.Beside(plan.Solver, edge)]);
        return new WireEdge(f.Id, from, to, f.Loose);
    }

    static WireTube Tube(SolidPlan plan, int cylinder)
    {
        var layout = plan.Solver.Layout;
        var f = plan.Of(layout.Features[cylinder].Id);
        var (from, to) = Span(plan, f, SolidPlanMaker.Beside(plan.Solver, cylinder));
        return new WireTube(f.Id, from, to, plan.Fit.X[layout.SizeOf(cylinder)] / 2, f.Loose);
    }

    /// <summary>As far along the line as the features beside it reach; a tenth of the part either way where they do not.</summary>
    static (Vec3 From, Vec3 To) Span(SolidPlan plan, SolidPlaced line, IReadOnlyList<int> beside)
    {
        var layout = plan.Solver.Layout;
        var along = beside.Select(b => line.Direction.Dot(layout.Place(b, plan.Fit.X) - line.At)).DefaultIfEmpty(0).ToList();
        var (low, high) = (along.Min(), along.Max());
        if (high - low < 0.05 * layout.Lever) (low, high) = (low - 0.1 * layout.Lever, high + 0.1 * layout.Lever);
        return (line.At + low * line.Direction, line.At + high * line.Direction);
    }

    static WireFace Face(SolidPlan plan, int plane)
    {
        var (layout, x) = (plan.Solver.Layout, plan.Fit.X);
        var f = plan.Of(layout.Features[plane].Id);
        var n = f.Direction;
        var ex = (Math.Abs(n.X) < 0.6 ? new Vec3(1, 0, 0) : new Vec3(0, 1, 0)).Cross(n).Unit;
        var ey = n.Cross(ex);
        var hull = Hull.Of(SolidPlanMaker.Beside(plan.Solver, plane).Select(b => layout.Place(b, x) - f.At).Select(v => new Vec2(ex.Dot(v), ey.Dot(v))));
        if (hull.Length < 3)
        {
            var half = 0.1 * layout.Lever;
            hull = [new(-half, -half), new(half, -half), new(half, half), new(-half, half)];
        }
        return new WireFace(f.Id, n, [.. hull.Select(p => f.At + p.X * ex + p.Y * ey)], f.Loose);
    }
}
