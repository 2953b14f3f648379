using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Patterns.Weights;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Search;

/// <summary>Takes the best of what is offered, again and again, until nothing is good enough.</summary>
static class Greedy
{
    /// <summary>
    /// A pattern is taken at odds of three to one against chance. A listed value only needs to be likelier than none while runs are
    /// compared, since a draughtsman who writes figures writes one for everything; <see cref="Review"/> then asks for more.
    /// </summary>
    public static double Enough(PatternKind kind) => Order.IsListed(kind) ? 0 : Math.Log(3);

    /// <summary>Five standard deviations: further off it is not weighed again. Cause: one in a million true ones is lost.</summary>
    const double Hopeless = 25;

    public static Course Take(Course course, IEnumerable<Hypothesis> offered, Order order, Barred barred, CancellationToken stop)
    {
        var (shape, belief) = (course.Shape, course.Belief.Copy());
        var from = (double[])belief.X.Clone();
        var open = offered.Select(h => (Hypothesis: h, Slopes: h.Parts.Select(p => Slope.Of(p, shape, belief)).ToImmutableArray())).ToList();
        var taken = course.Taken.ToBuilder();
        var log = course.Log;
        while (open.Count > 0)
        {
            stop.ThrowIfCancellationRequested();
            var (best, most, verdict) = (-1, double.NegativeInfinity, default(Verdict));
            for (var i = open.Count - 1; i >= 0; i--)
            {
                var (hypothesis, slopes) = open[i];
                var seen = Weigher.Of(slopes, belief, from);
                if (seen.Freedom == 0 || seen.Contradicts || seen.ChiSquare > Hopeless * seen.Freedom)
                {
                    open.RemoveAt(i);
                    if (best > i) best--;
                    continue;
                }
                var odds = seen.Log + hypothesis.LogPrior + seen.Freedom * order.LogOdds(Order.IsListed(hypothesis.Kind));
                if (odds <= most || odds < Enough(hypothesis.Kind)) continue;
                (best, most, verdict) = (i, odds, seen);
            }
            if (best < 0) break;
            var (chosen, held) = open[best];
            open.RemoveAt(best);
            var before = (double[])belief.X.Clone();
            var trial = barred.IsEmpty ? belief : belief.Copy();
            Hold(trial, held, from);
            if (barred.Breaks(trial)) continue;
            belief = trial;
            taken.Add(new(chosen, verdict, most, MovedMost(shape, before, belief.X), false));
            log += most;
        }
        if (taken.Count == course.Taken.Length) return course;
        var all = taken.ToImmutable();
        var next = course with { Taken = all, Log = log };
        return next with { Belief = Settle.On(shape, belief.Root, next.Conditions, belief.X).Belief };
    }

    /// <summary>Makes every part hold that is not certain yet.</summary>
    public static void Hold(Belief belief, ImmutableArray<Slope> slopes, double[] from)
    {
        foreach (var slope in slopes)
        {
            var variance = belief.Now.Covariance(slope.Columns, slope.Rates, slope.Columns, slope.Rates);
            if (Weigher.Open(variance, slope)) belief.Hold(slope, slope.At(from, belief.X), variance);
        }
    }

    /// <summary>The place or size that moved furthest between two beliefs; distances between neighbours are what counts, but the frame moves little.</summary>
    public static Move? MovedMost(Shape shape, double[] before, double[] after)
    {
        Move? most = null;
        foreach (var f in shape.Known)
        {
            var moved = shape.At(f, after).DistanceTo(shape.At(f, before));
            if (shape.SizeColumn(f) is >= 0 and var c) moved = Math.Max(moved, Math.Abs(after[c] - before[c]));
            if (most is null || moved > most.Value.Distance) most = new(shape.Id(f), moved);
        }
        return most;
    }
}
