using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>Puts the findings of one adjustment into the public records.</summary>
static class PlanMaker
{
    public static Plan Make(Solver solver, Fit fit, Testing tests, Doubts doubts, bool searchMirrors, CancellationToken stop)
    {
        var loose = Looseness.Of(solver, fit);
        var looseIds = Looseness.LooseIds(loose);
        double[]? better = null;
        var mirrors = searchMirrors ? Mirrors.Of(solver, fit, looseIds, out better, stop) : [];
        var global = Findings.Global(fit, OnceOnly.Redundancy(solver, fit), OnceOnly.MayAgreeBetter(solver, fit));
        return new Plan(
            Placed(solver, fit, looseIds),
            fit.Convergence,
            solver.Layout.Count,
            fit.Datum.Length,
            fit.Free.Length,
            global.Redundancy,
            fit.SumOfSquares,
            global,
            tests.Critical,
            Findings.Results(solver, fit, tests, doubts, solver.Sample.Readings.Length),
            doubts,
            loose,
            mirrors)
        { Solver = solver, Fit = fit, BetterStart = better, Scales = Scales(solver, fit) };
    }

    static ImmutableArray<Placed> Placed(Solver solver, Fit fit, IReadOnlySet<string> loose)
    {
        var layout = solver.Layout;
        var ellipse = Quantities.Ellipses(solver, fit);
        return [.. layout.Features.Select((f, i) => new Placed(
            f.Id,
            f.Kind,
            At(layout, fit, i),
            f.Kind is FeatureKind.Slot or FeatureKind.Edge ? layout.Turn(i, fit.X) : 0,
            layout.SizeOf(i) is >= 0 and var size ? Quantities.Unknown(solver, fit, size) : null,
            Length(solver, fit, i),
            layout.HasPlace(i) ? ellipse(layout.First(i)) : default,
            loose.Contains(f.Id))
        { Condition = f.Condition })];
    }

    static ImmutableArray<FrameScale> Scales(Solver solver, Fit fit)
    {
        var layout = solver.Layout;
        return [.. from k in Enumerable.Range(0, layout.Frames.Length)
                   where layout.IsScaled(layout.FrameAt(k))
                   let found = Quantities.Unknown(solver, fit, layout.FrameAt(k) + 3)
                   where found is not null
                   select new FrameScale(layout.Frames[k], new Uncertain(1 + found.Value.Value / layout.Lever, found.Value.Std / layout.Lever))];
    }

    static Vec2 At(Layout layout, Fit fit, int feature)
    {
        if (layout.HasPlace(feature)) return layout.Place(feature, fit.X);
        if (!layout.IsCornerEdge(feature)) return layout.Line(feature, fit.X).At;
        var (a, b) = layout.Corners(feature);
        return (layout.Place(a, fit.X) + layout.Place(b, fit.X)) / 2;
    }

    static Uncertain? Length(Solver solver, Fit fit, int feature)
    {
        var layout = solver.Layout;
        if (layout.Features[feature].Kind == FeatureKind.Slot) return Quantities.Unknown(solver, fit, layout.First(feature) + 3);
        if (!layout.IsCornerEdge(feature)) return null;
        var (a, b) = layout.Corners(feature);
        return Quantities.Of(solver, fit, Quantities.Distance(a, b));
    }
}
