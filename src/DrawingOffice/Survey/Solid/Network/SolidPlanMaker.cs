using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>Puts the findings of one adjustment in space into the public records.</summary>
static class SolidPlanMaker
{
    public static SolidPlan Make(SolidSolver solver, Fit fit, Testing tests, Doubts doubts, bool searchMirrors, CancellationToken stop)
    {
        var loose = SolidLooseness.Of(solver, fit);
        var looseIds = loose.SelectMany(g => g.Ids).ToHashSet();
        double[]? better = null;
        var mirrors = searchMirrors ? SolidMirrors.Of(solver, fit, looseIds, out better, stop) : [];
        return new SolidPlan(
            solver.Sample,
            Placed(solver, fit, looseIds),
            fit.Convergence,
            solver.Unknowns - solver.Gauges,
            fit.Datum.Length,
            fit.Free.Length,
            fit.Redundancy,
            fit.SumOfSquares,
            Findings.Global(fit),
            tests.Critical,
            Findings.Results(solver, fit, tests, doubts, solver.Sample.Readings.Length),
            doubts,
            loose,
            mirrors,
            HandOf(solver, fit))
        { Solver = solver, Fit = fit, BetterStart = better };
    }

    static ImmutableArray<SolidPlaced> Placed(SolidSolver solver, Fit fit, HashSet<string> loose)
    {
        var layout = solver.Layout;
        var keepers = SolidQuantities.Keepers(solver, fit);
        var entry = Quantities.InnerCovariance(solver, fit, keepers);
        return [.. layout.Features.Select((f, i) => new SolidPlaced(
            f.Id,
            f.Kind,
            At(solver, fit.X, i),
            layout.HasDirection(i) ? layout.Direction(i, fit.X) : f.Kind == SolidKind.Hole ? (f.SketchDirection ?? Vec3.Zero).Unit : Vec3.Zero,
            SolidQuantities.DirectionStd(solver, fit, keepers, entry, i),
            layout.SizeOf(i) is >= 0 and var size ? Quantities.Unknown(solver, fit, size) : null,
            Length(solver, fit, i),
            layout.HasPlace(i) ? SolidQuantities.Ellipsoid(entry, layout.First(i)) : default,
            loose.Contains(f.Id)))];
    }

    /// <summary>A place that shows where the feature is: its own, or the one nearest the middle of the features tied to it.</summary>
    public static Vec3 At(SolidSolver solver, double[] x, int feature)
    {
        var layout = solver.Layout;
        if (layout.HasPlace(feature) || layout.IsCornered(feature)) return layout.Place(feature, x);
        var near = Beside(solver, feature).Select(f => layout.Place(f, x)).ToList();
        var middle = near.Count == 0 ? solver.Centre(x) : near.Aggregate(Vec3.Zero, (a, b) => a + b) / near.Count;
        var along = layout.Direction(feature, x);
        return layout.IsPlane(feature)
            ? middle - along * (along.Dot(middle - layout.Middle) - layout.Offset(feature, x))
            : layout.Place(feature, x) + along * along.Dot(middle - layout.Place(feature, x));
    }

    /// <summary>Points and holes that lie on a face, line or cylinder; failing those, the ones that readings tie to it.</summary>
    public static IReadOnlyList<int> Beside(SolidSolver solver, int feature)
    {
        var tied = solver.Equations.Rows.Where(o => o.To == feature && o.From >= 0 && o.Form is not (Form.Length or Form.FrameFlat)).ToList();
        var on = Places(tied.Where(o => o is { Value: 0, Signed: true } || o.Form is Form.Beside or Form.OnSurface or Form.OnFace));
        return on.Count > 0 ? on : Places(tied);
        List<int> Places(IEnumerable<SolidObserved> rows) => [.. rows.Select(o => o.From).Where(solver.Layout.HasPlace).Distinct()];
    }

    static Uncertain? Length(SolidSolver solver, Fit fit, int feature)
    {
        if (!solver.Layout.IsCornered(feature)) return null;
        var (a, b) = solver.Layout.Corners(feature);
        return SolidQuantities.Of(solver, fit, SolidQuantities.Distance(a, b));
    }

    /// <summary>Lengths, heights and angles are the same on a part and its mirror image; only places on a face seen from outside tell left from right.</summary>
    static Hand HandOf(SolidSolver solver, Fit fit)
    {
        var layout = solver.Layout;
        for (var k = 0; k < layout.Frames.Length; k++)
        {
            var first = layout.FirstOfFrames + 5 * k;
            var seen = Enumerable.Range(0, fit.Weights.Length).Where(r => fit.Weights[r] > 0 && solver.Equations.Rows[r] is { Form: Form.OnFace } o && o.Spot == first)
                .Select(r => layout.Place(solver.Equations.Rows[r].From, fit.X)).ToList();
            if (seen.Any(a => seen.Any(b => (a - seen[0]).Cross(b - seen[0]).Length > 1e-3 * layout.Lever * layout.Lever)))
                return new Hand(true, $"The places read on face {layout.Features[layout.Frames[k].Plane].Id}, seen from outside, tell the part from its mirror image.");
        }
        return new Hand(false, "The readings do not tell the part from its mirror image: the hand is taken from the sketch. Hold the plan beside the part.");
    }
}
