using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// Looks for second shapes that the readings allow: parts that hang on two features are turned over about the line through
/// them, and single features are tried at every other crossing of their loci; each trial is adjusted in full and kept when it
/// fits nearly as well; a feature on which others hang is laid out anew together with them. A search, not a proof: where whole
/// bodies can change places in ways that are no mirror image, a second shape may go unseen.
/// </summary>
static class Mirrors
{
    /// <summary>A second shape counts while the readings favour the first by less than about a thousand to one: 2 ln 1000.</summary>
    const double NearlyAsGood = 13.8;

    /// <summary>Trials worse than this before adjustment are not worth adjusting: a reading off by some twenty of its ±.</summary>
    const double WorthTrying = 400;

    /// <summary>
    /// How much better a second shape must fit to become the first. What was sketched keeps its side, for a misread value is explained
    /// away all too easily by turning a corner over; where nobody sketched the features, any gain beyond rounding will do.
    /// </summary>
    static double Decisive(Layout layout, int[] flips) => flips.All(f => layout.Features[f].Sketch is null) ? 1e-3 : double.PositiveInfinity;

    /// <param name="better">Where a shape was found that fits better than the one searched from; the search then ends, to begin anew from there.</param>
    public static ImmutableArray<Mirror> Of(Solver solver, Fit fit, IReadOnlySet<string> loose, out double[]? better, CancellationToken stop)
    {
        var found = new List<Mirror>();
        better = null;
        var layout = solver.Layout;
        foreach (var (flips, about, trial) in Trials(solver, fit, stop))
        {
            stop.ThrowIfCancellationRequested();
            if (flips.Any(f => loose.Contains(layout.Features[f].Id)) || found.Any(m => Same(layout, m, flips))) continue;
            if (SumOfSquares(solver, fit, trial) > fit.SumOfSquares + WorthTrying) continue;
            if (Second(solver, fit, trial, stop) is not { } second || second.Free.Length > fit.Free.Length) continue;
            if (second.SumOfSquares < fit.SumOfSquares - Decisive(layout, flips))
            {
                better = second.X;
                return [];
            }
            if (Compare(solver, fit, second, flips, about) is { } mirror) found.Add(mirror);
        }
        return [.. found];
    }

    /// <summary>The trial adjusted in full; null when it fits clearly worse.</summary>
    static Fit? Second(Solver solver, Fit fit, double[] trial, CancellationToken stop)
    {
        if (solver.HasWear)
        {
            var worn = solver.Adjust(trial, fit.Weights, stop);
            return worn.Convergence.Converged && worn.SumOfSquares <= fit.SumOfSquares + NearlyAsGood ? worn : null;
        }
        var minimum = solver.Minimise(trial, fit.Weights, stop);
        return minimum.Converged && minimum.SumOfSquares <= fit.SumOfSquares + NearlyAsGood ? solver.Settle(minimum, fit.Weights) : null;
    }

    static IEnumerable<(int[] Flips, int[] About, double[] X)> Trials(Solver solver, Fit fit, CancellationToken stop)
    {
        var layout = solver.Layout;
        var cliques = Enumerable.Range(0, fit.Weights.Length).Where(r => fit.Weights[r] > 0).Select(r => solver.Places(r).ToArray());
        foreach (var (a, b, part) in new Separation(layout.Features.Length, cliques).Parts())
        {
            var flips = part.Where(layout.HasPlace).ToArray();
            if (layout.HasPlace(a) && layout.HasPlace(b) && flips.Length > 0) yield return (flips, [a, b], TurnedOver(layout, fit.X, flips, a, b));
        }
        var loci = new Loci(solver);
        for (var f = 0; f < layout.Features.Length; f++)
        {
            if (!layout.HasPlace(f)) continue;
            var here = layout.Place(f, fit.X);
            var there = loci.Candidates(f, fit.X, _ => true)
                .Where(p => p.DistanceTo(here) > Distinct(layout))
                .Select(p => (Place: p, Misfit: loci.Misfit(f, p, fit.X, fit.Weights, _ => true)))
                .OrderBy(c => c.Misfit).FirstOrDefault((Place: here, Misfit: double.PositiveInfinity));
            if (there.Misfit > fit.SumOfSquares + WorthTrying) continue;
            var x = (double[])fit.X.Clone();
            (x[layout.First(f)], x[layout.First(f) + 1]) = (there.Place.X, there.Place.Y);
            yield return ([f], MirrorLine(solver, fit, f, there.Place), x);
        }
        for (var f = 0; f < layout.Features.Length; f++)
        {
            if (!layout.HasPlace(f)) continue;
            foreach (var x in LaidAnew(solver, fit, f, Hanging(solver, fit, loci, f), stop))
                yield return ([.. Moved(layout, fit.X, x)], [], x);
        }
    }

    /// <summary>A feature with all those that too few readings would hold (fewer than two) if it were gone.</summary>
    static HashSet<int> Hanging(Solver solver, Fit fit, Loci loci, int feature)
    {
        var hanging = new HashSet<int> { feature };
        bool Hangs(int f)
        {
            var ties = loci.Rows(f).Where(r => fit.Weights[r] > 0 && solver.Places(r).Length > 1).ToList();
            return ties.Count(r => !solver.Places(r).Any(hanging.Contains)) is var held && held < 2 && held < ties.Count;
        }
        while (Enumerable.Range(0, solver.Layout.Features.Length).Where(f => solver.Layout.HasPlace(f) && !hanging.Contains(f) && Hangs(f)).ToList() is { Count: > 0 } more)
            hanging.UnionWith(more);
        return hanging;
    }

    /// <summary>Shapes in which a feature lies elsewhere and what hangs on it follows; none where nothing hangs on it, or most of the plan does.</summary>
    static IEnumerable<double[]> LaidAnew(Solver solver, Fit fit, int feature, HashSet<int> hanging, CancellationToken stop)
    {
        var layout = solver.Layout;
        bool[] placed = [.. Enumerable.Range(0, layout.Features.Length).Select(f => layout.HasPlace(f) && !hanging.Contains(f))];
        if (hanging.Count < 2 || placed.Count(p => p) < Math.Max(2, hanging.Count)) return [];
        return new Construction(solver, stop).Grow([.. fit.X], placed).Where(x => Moved(layout, fit.X, x).Contains(feature));
    }

    static IEnumerable<int> Moved(Layout layout, double[] before, double[] after) =>
        Enumerable.Range(0, layout.Features.Length).Where(f => layout.HasPlace(f) && layout.Place(f, before).DistanceTo(layout.Place(f, after)) > Distinct(layout));

    static double Distinct(Layout layout) => 1e-3 * layout.Lever;

    static double[] TurnedOver(Layout layout, double[] x, int[] flips, int a, int b)
    {
        var y = (double[])x.Clone();
        var (p, q) = (layout.Place(a, x), layout.Place(b, x));
        foreach (var f in flips)
        {
            var image = Image(layout.Place(f, x), p, q);
            (y[layout.First(f)], y[layout.First(f) + 1]) = (image.X, image.Y);
            if (layout.Features[f].Kind == FeatureKind.Slot) y[layout.TurnOf(f)] = 2 * (q - p).Angle * layout.Lever - y[layout.TurnOf(f)];
        }
        return y;
    }

    static Vec2 Image(Vec2 v, Vec2 p, Vec2 q)
    {
        var along = (q - p).Unit;
        return v - 2 * along.Left.Dot(v - p) * along.Left;
    }

    /// <summary>Two features among those the moved one is tied to, about whose line the two places are mirror images; none if there are no such two.</summary>
    static int[] MirrorLine(Solver solver, Fit fit, int feature, Vec2 there)
    {
        var layout = solver.Layout;
        var ties = Enumerable.Range(0, fit.Weights.Length).Where(r => fit.Weights[r] > 0)
            .Select(r => solver.Places(r).ToArray()).Where(c => c.Contains(feature))
            .SelectMany(c => c).Where(f => f != feature).Distinct().Order().ToArray();
        foreach (var a in ties)
            foreach (var b in ties.Where(b => b > a))
                if (Image(layout.Place(feature, fit.X), layout.Place(a, fit.X), layout.Place(b, fit.X)).DistanceTo(there) < Distinct(layout)) return [a, b];
        return [];
    }

    static double SumOfSquares(Solver solver, Fit fit, double[] x)
    {
        var residual = new double[fit.Weights.Length];
        solver.Equations.Evaluate(x, residual);
        return Maths.LeastSquares.TrustRegion.SumOfSquares(residual, fit.Weights);
    }

    static bool Same(Layout layout, Mirror mirror, int[] flips) => mirror.Flips.SequenceEqual(flips.Select(f => layout.Features[f].Id));

    static Mirror? Compare(Solver solver, Fit first, Fit second, int[] flips, int[] about)
    {
        var layout = solver.Layout;
        var pairs = new List<(PairDistance Second, double First)>();
        for (var a = 0; a < layout.Features.Length; a++)
            for (var b = a + 1; b < layout.Features.Length; b++)
            {
                if (flips.Contains(a) == flips.Contains(b) || !layout.HasPlace(a) || !layout.HasPlace(b)) continue;
                var before = layout.Place(a, first.X).DistanceTo(layout.Place(b, first.X));
                var after = layout.Place(a, second.X).DistanceTo(layout.Place(b, second.X));
                if (Math.Abs(after - before) < Distinct(layout)) continue;
                if (Quantities.Of(solver, second, Quantities.Distance(a, b)) is { } d)
                    pairs.Add((new PairDistance(layout.Features[a].Id, layout.Features[b].Id, d.Value, d.Std), before));
            }
        if (pairs.Count == 0) return null;
        pairs.Sort((p, q) => Math.Abs(q.Second.Distance - q.First).CompareTo(Math.Abs(p.Second.Distance - p.First)));
        return new Mirror(
            [.. flips.Select(f => layout.Features[f].Id)],
            [.. about.Select(f => layout.Features[f].Id)],
            second.SumOfSquares,
            [.. pairs.Select(p => p.Second)],
            [.. pairs.Take(3).Select(p => new Deciding(p.Second.From, p.Second.To, p.First, p.Second.Distance))]);
    }
}
