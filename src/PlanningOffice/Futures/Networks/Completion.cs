using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>When a network is done, over many futures.</summary>
/// <param name="Criticality">For each activity the share of futures in which the longest path runs through it.</param>
public sealed record Completion(Spread Time, ImmutableDictionary<string, double> Criticality)
{
    /// <summary>
    /// Plain Monte Carlo: durations are independent, the first activities start at 0, completion is the latest end.
    /// </summary>
    /// <param name="futures">At least <see cref="Spread.FewestFutures"/>.</param>
    public static Completion Simulate(Network network, int futures, Chance chance, CancellationToken cancel = default)
    {
        var n = network.Activities.Length;
        var ends = new double[n];
        var longest = new int[n];
        var critical = new int[n];
        var completion = new double[Math.Max(futures, 0)];
        for (var f = 0; f < futures; f++)
        {
            if (f % 1024 == 0) cancel.ThrowIfCancellationRequested();
            var last = Run(network, ends, longest, chance);
            completion[f] = ends[last];
            for (var i = last; i >= 0; i = longest[i]) critical[i]++;
        }
        return new(Spread.Of(completion),
            Enumerable.Range(0, n).ToImmutableDictionary(i => network.Activities[i].Id, i => critical[i] / (double)futures));
    }

    /// <summary>One future.</summary>
    /// <param name="longest">Filled with the predecessor each activity waited for, −1 for none.</param>
    /// <returns>The activity that ends last.</returns>
    static int Run(Network network, double[] ends, int[] longest, Chance chance)
    {
        var last = 0;
        for (var i = 0; i < ends.Length; i++)
        {
            longest[i] = -1;
            var start = 0.0;
            foreach (var p in network.Before[i])
                if (longest[i] < 0 || ends[p] > start) (start, longest[i]) = (ends[p], p);
            ends[i] = start + network.Activities[i].Duration.Draw(chance);
            if (ends[i] > ends[last]) last = i;
        }
        return last;
    }
}
