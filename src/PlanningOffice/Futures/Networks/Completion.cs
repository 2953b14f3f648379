using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>When a network is done, over many futures.</summary>
/// <param name="Criticality">For each activity the share of futures in which the longest path runs through it.</param>
public sealed record Completion(Spread Time, ImmutableDictionary<string, double> Criticality)
{
    public const int MostFutures = 10_000_000;

    /// <summary>Futures that share a stream of chance; the outcome does not depend on who runs which.</summary>
    const int Part = 8192;

    /// <summary>
    /// Plain Monte Carlo: durations are independent and drawn exactly, the first activities start at 0, completion is the
    /// latest end.
    /// </summary>
    /// <param name="futures">From <see cref="Spread.FewestFutures"/> to <see cref="MostFutures"/>.</param>
    /// <param name="hands">One after another when null.</param>
    public static Completion Simulate(Network network, int futures, ulong seed, Hands? hands = null, CancellationToken cancel = default)
    {
        if (futures is < Spread.FewestFutures or > MostFutures)
            throw new RefusedException(Refusal.Of("futures", $"{futures}", $"give a whole number from {Spread.FewestFutures} to {MostFutures}"));
        var n = network.Activities.Length;
        var critical = new long[n];
        var completion = new double[futures];
        hands ??= OneByOne;
        hands((futures + Part - 1) / Part, part =>
        {
            cancel.ThrowIfCancellationRequested();
            var counted = new int[n];
            Run(network, completion.AsSpan(part * Part, Math.Min(Part, futures - part * Part)), counted, new Chance(Keyed.Bits(Keyed.Mix(seed), part)));
            for (var i = 0; i < n; i++) Interlocked.Add(ref critical[i], counted[i]);
        });
        return new(Spread.Of(completion),
            Enumerable.Range(0, n).ToImmutableDictionary(i => network.Activities[i].Id, i => critical[i] / (double)futures));
    }

    static void OneByOne(int parts, Action<int> part)
    {
        for (var i = 0; i < parts; i++) part(i);
    }

    static void Run(Network network, Span<double> completion, int[] critical, Chance chance)
    {
        var ends = new double[critical.Length];
        var longest = new int[critical.Length];
        foreach (ref var done in completion)
        {
            var last = Run(network, ends, longest, chance);
            done = ends[last];
            for (var i = last; i >= 0; i = longest[i]) critical[i]++;
        }
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
