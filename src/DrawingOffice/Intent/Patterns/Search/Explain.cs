using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Patterns.Offers;
using WitnessMark.DrawingOffice.Intent.Wear;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Search;

/// <summary>The likeliest way of explaining a plan, and what it was weighed with.</summary>
sealed record Explained(Course Course, Order Sizes, Order Places, Origin Origin, ImmutableArray<OriginOdds> Origins, ImmutableArray<Frame> Frames)
{
    /// <summary>Logarithm of the odds against the best run of another order.</summary>
    public double OverNext { get; init; }

    /// <summary>Prior odds of one freedom under the orders that won.</summary>
    public double PerFreedom(Hypothesis h) => (h.Kind is PatternKind.EqualSize or PatternKind.RoundSize ? Sizes : Places).LogOdds(Order.IsListed(h.Kind));
}

/// <summary>
/// The bounded search: for each order of places and each tradition of sizes a greedy run from the surest pattern to the least,
/// patterns before listed values. The whole runs are compared by the logarithm of their odds, which is the information
/// criterion: what each freedom costs when it is left free stands against what each condition earns.
/// </summary>
/// <remarks>
/// Bound: |orders of sizes| + |orders of places| · (1 + |traditions|) runs, each of at most as many steps as the plan has freedoms.
/// The search is greedy within a run; <see cref="Review"/> then takes back what the rest does without.
/// </remarks>
static class Explain
{
    public static Explained Of(Course start, Barred barred, IntentWish wish, IProgress<IntentProgress>? progress, CancellationToken stop)
    {
        var shape = start.Shape;
        var traditions = Traditions(wish.Prior);
        var (done, of) = (0, Order.Sizes.Length + Order.Places.Length * (1 + traditions.Length));
        void Step() => progress?.Report(new(++done, of));

        IEnumerable<Hypothesis> ListedSizes(Course c, Origin o) => Offers.Sizes.Listed(shape, c.Belief.X, o, wish.Prior, wish.Making);
        var sized = new List<(Order Order, Course Alike, double Log)>();
        foreach (var order in Order.Sizes)
        {
            var alike = Greedy.Take(start, Offers.Sizes.Alike(shape), order, barred, stop);
            var log = traditions.Select(t => Math.Log(t.Weight) + Greedy.Take(alike, ListedSizes(alike, t.Origin), order, barred, stop).Log);
            sized.Add((order, alike, LogSum.Of(log) + shape.Sized.Length * Math.Log(order.Free)));
            Step();
        }
        var sizes = sized.MaxBy(s => s.Log);

        var freedoms = Math.Max(0, 2 * shape.Places.Length - 3) + shape.Directed.Count(f => shape.Kind(f) == Survey.FeatureKind.Slot || shape.IsFreeEdge(f)) * 2;
        var found = new List<(Explained Way, double Log, int Tradition)>();
        foreach (var order in Order.Places)
        {
            var (patterns, frames) = Patterns(sizes.Alike, order, barred, stop);
            Step();
            for (var t = 0; t < traditions.Length; t++)
            {
                var origin = traditions[t].Origin;
                var listed = Greedy.Take(patterns, ListedSizes(patterns, origin), sizes.Order, barred, stop);
                // The size over all first: it ties the two sides together that everything else is counted from.
                listed = Greedy.Take(listed, frames.SelectMany(f => Distances.Listed(f, listed.Belief.X, origin, wish.Prior, overAll: true)), order, barred, stop);
                listed = Greedy.Take(listed, ListedDistances(listed, frames, origin, wish.Prior), order, barred, stop);
                found.Add((new(listed, sizes.Order, order, origin, [], frames), listed.Log + Lattice.Bonus(listed, frames, origin, wish.Prior) + Math.Log(traditions[t].Weight) + freedoms * Math.Log(order.Free), t));
                Step();
            }
        }
        var all = LogSum.Of(found.Select(f => f.Log));
        var best = found.MaxBy(f => f.Log);
        return best.Way with
        {
            OverNext = best.Log - found.Where(f => f.Way.Places != best.Way.Places).Max(f => f.Log),
            Origins = [.. traditions.Select((t, i) => new OriginOdds(t.Name, found.Where(f => f.Tradition == i).Sum(f => Math.Exp(f.Log - all)))).OrderByDescending(o => o.Probability)],
        };
    }

    static (Course, ImmutableArray<Frame>) Patterns(Course course, Order order, Barred barred, CancellationToken stop)
    {
        var shape = course.Shape;
        course = Greedy.Take(course, Directions.Of(shape), order, barred, stop);
        var frames = Frames.Of(shape, course.Belief.X);
        Func<double[], IEnumerable<Hypothesis>>[] stages =
        [
            x => Rings.Stepped(shape, x),
            x => frames.SelectMany(f => Rows.InLine(f, x)),
            x => Touches.Of(shape, x),
            x => frames.SelectMany(f => Rows.Spaced(f, x)),
            x => Rings.Plain(shape, x),
            x => frames.SelectMany(f => Rows.Balanced(f, x)),
            x => Rings.Oblongs(shape, x),
        ];
        foreach (var stage in stages) course = Greedy.Take(course, stage(course.Belief.X), order, barred, stop);
        return (course, frames);
    }

    static IEnumerable<Hypothesis> ListedDistances(Course course, ImmutableArray<Frame> frames, Origin origin, OriginPrior prior)
    {
        var x = course.Belief.X;
        var rings = course.Taken.Select(t => t.Hypothesis).Where(h => h.Ring is not null && h.Nominal is null).Select(h => h.Ring!);
        return rings.SelectMany(r => Rings.Diameters(r, x, origin, prior)).Concat(frames.SelectMany(f => Distances.Listed(f, x, origin, prior, overAll: false)));
    }

    /// <summary>Origins that reach for the same lengths and holes are one tradition here.</summary>
    static ImmutableArray<(string Name, Origin Origin, double Weight)> Traditions(OriginPrior prior)
    {
        static bool IsMetric(Origin o) => o.Share("metric size") > o.Share("inch fraction");
        var all = prior.Origins.Sum(o => o.Weight);
        return
        [
            .. prior.Origins.Where(o => o.Weight > 0).GroupBy(IsMetric)
                .Select(g => (g.Key ? "metric" : "inch", g.MaxBy(o => o.Weight)!, g.Sum(o => o.Weight) / all)),
        ];
    }
}
