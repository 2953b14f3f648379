using WitnessMark.Maths.LeastSquares;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// Gets an adjustment out of a wrong valley (a feature folded to the wrong side by a poor sketch or none): each feature is
/// tried at the other crossings of its loci, each hanging part turned over, and what lowers the sum of squares is kept.
/// </summary>
static class Repair
{
    const int MostRounds = 20;

    /// <summary>
    /// Sum of squares a reading from which a sketched shape is doubted at all. Cause: a feature on its wrong side misses by millimetres,
    /// hundreds of any ±; a misread value or two give less, and are not to be explained by folding what the person has seen and sketched.
    /// </summary>
    const double Hopeless = 30;

    public static Minimum Improve(Solver solver, double[] x, double[] weights, CancellationToken stop)
    {
        var layout = solver.Layout;
        var first = solver.Minimise(x, weights, stop);
        if (!IsPoor(first.SumOfSquares, weights)) return first;
        var sketched = layout.Features.Any(f => f.Sketch is not null);
        if (sketched && first.SumOfSquares < Hopeless * weights.Count(w => w > 0)) return first;
        var (best, loci) = (first, new Loci(solver));
        for (var round = 0; round < MostRounds && IsPoor(best.SumOfSquares, weights); round++)
        {
            var better = false;
            foreach (var f in Worst(solver, best.X, weights))
            {
                stop.ThrowIfCancellationRequested();
                var here = loci.Misfit(f, layout.Place(f, best.X), best.X, weights, _ => true);
                foreach (var (place, misfit) in loci.Candidates(f, best.X, _ => true)
                    .Select(p => (p, loci.Misfit(f, p, best.X, weights, _ => true))).OrderBy(c => c.Item2).Take(3))
                {
                    if (misfit > here + 0.5 * best.SumOfSquares || place.DistanceTo(layout.Place(f, best.X)) < 1e-3 * layout.Lever) continue;
                    var trial = (double[])best.X.Clone();
                    (trial[layout.First(f)], trial[layout.First(f) + 1]) = (place.X, place.Y);
                    var end = solver.Minimise(trial, weights, stop);
                    if (!(end.SumOfSquares < 0.9 * best.SumOfSquares)) continue;
                    (best, better) = (end, true);
                    break;
                }
                if (better) break;
            }
            if (!better) break;
        }
        // A shape against the sketch must explain the readings, or nearly; half a gain is a gross error explained away by folding the part.
        return sketched && IsPoor(best.SumOfSquares, weights) && best.SumOfSquares > 0.1 * first.SumOfSquares ? first : best;
    }

    /// <summary>Worse than errors of the stated ± would give even with nothing fitted: a wrong valley, or gross errors.</summary>
    static bool IsPoor(double sum, double[] weights) => sum > ChiSquare.Quantile(0.999, Math.Max(1, weights.Count(w => w > 0)));

    /// <summary>Features by how badly their readings fit.</summary>
    static IEnumerable<int> Worst(Solver solver, double[] x, double[] weights)
    {
        var layout = solver.Layout;
        var blame = new double[layout.Features.Length];
        for (var r = 0; r < weights.Length; r++)
        {
            if (weights[r] == 0) continue;
            var f = solver.Equations.Residual(r, x);
            foreach (var p in solver.Places(r)) blame[p] += weights[r] * f * f;
        }
        return Enumerable.Range(0, blame.Length).Where(layout.HasPlace).OrderByDescending(f => blame[f]).Take(12).ToList();
    }
}
