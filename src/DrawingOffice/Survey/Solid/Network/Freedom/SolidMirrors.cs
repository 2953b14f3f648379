using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>
/// Looks for second shapes in space: single features fitted anew from other guesses, parts that hang on one face mirrored in it, parts
/// that hang on three places mirrored in the plane through them; each is adjusted in full and kept when it fits nearly as well. A
/// search, not a proof. The mirror image of the whole part is no second shape here: see <see cref="Hand"/>.
/// </summary>
static class SolidMirrors
{
    /// <summary>A second shape counts while the readings favour the first by less than about a thousand to one: 2 ln 1000.</summary>
    const double NearlyAsGood = 13.8;

    /// <summary>Trials worse than this before adjustment are not worth adjusting: a reading off by some twenty of its ±.</summary>
    const double WorthTrying = 400;

    /// <summary>
    /// How much better a second shape must fit to become the first; as on a flat part: what was sketched keeps its side, elsewhere any
    /// gain beyond rounding will do.
    /// </summary>
    static double Decisive(SolidLayout layout, int[] flips) => flips.Where(layout.HasPlace).All(f => layout.Features[f].Sketch is null) ? 1e-3 : double.PositiveInfinity;

    /// <param name="better">Where a shape was found that fits better than the one searched from; the search then ends, to begin anew from there.</param>
    public static ImmutableArray<SolidMirror> Of(SolidSolver solver, Fit fit, IReadOnlySet<string> loose, out double[]? better, CancellationToken stop)
    {
        better = null;
        var found = new List<SolidMirror>();
        var layout = solver.Layout;
        var coarse = solver.Coarse();
        for (var r = 0; r < coarse.Length; r++) coarse[r] = Math.Min(coarse[r], fit.Weights[r]);
        foreach (var (flips, about, trial) in Alone(solver, fit, stop).Concat(Hanging(solver, fit)))
        {
            stop.ThrowIfCancellationRequested();
            string[] ids = [.. flips.Select(f => layout.Features[f].Id)];
            if (ids.Any(loose.Contains) || found.Any(m => m.Flips.SequenceEqual(ids))) continue;
            var minimum = solver.Minimise(solver.Minimise(trial, coarse, stop).X, fit.Weights, stop);
            if (!minimum.Converged || minimum.SumOfSquares > fit.SumOfSquares + NearlyAsGood) continue;
            var second = solver.Settle(minimum, fit.Weights);
            if (second.Free.Length > fit.Free.Length) continue;
            if (second.SumOfSquares < fit.SumOfSquares - Decisive(layout, flips))
            {
                better = second.X;
                return [];
            }
            if (Compare(solver, fit, second, ids, [.. about.Select(f => layout.Features[f].Id)]) is { } mirror && !found.Any(m => Same(m, mirror))) found.Add(mirror);
        }
        return [.. found];
    }

    /// <summary>Single features at every other place that their readings allow.</summary>
    static IEnumerable<(int[] Flips, int[] About, double[] X)> Alone(SolidSolver solver, Fit fit, CancellationToken stop)
    {
        var (layout, local) = (solver.Layout, new LocalFit(solver));
        var ordinary = solver.Ordinary;
        for (var f = 0; f < layout.Features.Length; f++)
        {
            if (!layout.HasPlace(f)) continue;
            stop.ThrowIfCancellationRequested();
            var ties = local.Ties(f, _ => true, _ => true).Where(r => fit.Weights[r] > 0).ToList();
            var others = new List<Vec3> { layout.Place(f, fit.X) };
            var x = (double[])fit.X.Clone();
            foreach (var _ in Guesses.Lay(solver, f, x, ties))
            {
                var trial = (double[])x.Clone();
                var sum = local.Settle(f, trial, ties, fit.Weights, ordinary);
                var place = layout.Place(f, trial);
                if (sum > fit.SumOfSquares + WorthTrying || others.Any(o => o.DistanceTo(place) < Distinct(layout))) continue;
                others.Add(place);
                yield return ([f], [], trial);
                // A feature that slides freely has no end of places; the first few tell.
                if (others.Count > 4) break;
            }
        }
    }

    static IEnumerable<(int[] Flips, int[] About, double[] X)> Hanging(SolidSolver solver, Fit fit)
    {
        var layout = solver.Layout;
        int[][] cliques = [.. Enumerable.Range(0, fit.Weights.Length).Where(r => fit.Weights[r] > 0).Select(solver.Named)];
        var separation = new Separation(layout.Features.Length, cliques);
        for (var plane = 0; plane < layout.Features.Length; plane++)
        {
            if (layout.Kind(plane) != SolidKind.Plane) continue;
            int[] face = [plane, .. SolidPlanMaker.Beside(solver, plane), .. Enumerable.Range(0, layout.Features.Length).Where(f => layout.On(f) == plane)];
            var mirror = (layout.Direction(plane, fit.X), layout.Middle + layout.Direction(plane, fit.X) * layout.Offset(plane, fit.X));
            foreach (var part in separation.Without([.. face.Distinct()]).OrderByDescending(c => c.Length).Skip(1))
                if (part.Any(layout.HasPlace)) yield return (part, [plane], Mirrored(layout, fit.X, part, mirror));
        }
        foreach (var (three, part) in separation.OnThree())
        {
            if (!three.All(layout.HasPlace) || !part.Any(layout.HasPlace)) continue;
            var (a, b, c) = (layout.Place(three[0], fit.X), layout.Place(three[1], fit.X), layout.Place(three[2], fit.X));
            var normal = (b - a).Cross(c - a);
            if (normal.Length > 1e-3 * layout.Lever * layout.Lever) yield return (part, three, Mirrored(layout, fit.X, part, (normal.Unit, a)));
        }
    }

    static double[] Mirrored(SolidLayout layout, double[] x, int[] part, (Vec3 Normal, Vec3 Through) mirror)
    {
        var y = (double[])x.Clone();
        Vec3 Turned(Vec3 v) => v - 2 * mirror.Normal.Dot(v) * mirror.Normal;
        Vec3 Image(Vec3 p) => mirror.Through + Turned(p - mirror.Through);
        foreach (var f in part)
        {
            if (layout.DirectionAt(f) is >= 0 and var at) SolidLayout.Write(at, y, Turned(SolidLayout.Read(at, x)));
            if (layout.HasPlace(f)) SolidLayout.Write(layout.PlaceAt(f), y, Image(layout.Place(f, x)));
            else if (layout.IsLine(f)) SolidLayout.Write(layout.PlaceAt(f), y, Guesses.Foot(layout, Image(layout.Place(f, x)), Turned(layout.Direction(f, x))));
            else if (layout.IsPlane(f)) y[layout.First(f) + 3] = Turned(layout.Direction(f, x)).Dot(Image(layout.Middle + layout.Direction(f, x) * layout.Offset(f, x)) - layout.Middle);
        }
        return y;
    }

    static double Distinct(SolidLayout layout) => 1e-3 * layout.Lever;

    static bool Same(SolidMirror a, SolidMirror b) => a.Second.Length == b.Second.Length && a.Second.Zip(b.Second).All(p => p.First.From == p.Second.From && p.First.To == p.Second.To && Math.Abs(p.First.Distance - p.Second.Distance) < 1e-3);

    static SolidMirror? Compare(SolidSolver solver, Fit first, Fit second, string[] flips, string[] about)
    {
        var layout = solver.Layout;
        var pairs = new List<(PairDistance Second, double First)>();
        for (var a = 0; a < layout.Features.Length; a++)
            for (var b = a + 1; b < layout.Features.Length; b++)
            {
                if (!layout.HasPlace(a) || !layout.HasPlace(b)) continue;
                var before = layout.Place(a, first.X).DistanceTo(layout.Place(b, first.X));
                if (Math.Abs(layout.Place(a, second.X).DistanceTo(layout.Place(b, second.X)) - before) < Distinct(layout)) continue;
                if (SolidQuantities.Of(solver, second, SolidQuantities.Distance(a, b)) is { } d)
                    pairs.Add((new PairDistance(layout.Features[a].Id, layout.Features[b].Id, d.Value, d.Std), before));
            }
        if (pairs.Count == 0) return null;
        pairs.Sort((p, q) => Math.Abs(q.Second.Distance - q.First).CompareTo(Math.Abs(p.Second.Distance - p.First)));
        return new SolidMirror([.. flips], [.. about], second.SumOfSquares, [.. pairs.Select(p => p.Second)],
            [.. pairs.Take(3).Select(p => new Deciding(p.Second.From, p.Second.To, p.First, p.Second.Distance))]);
    }
}
