using System.Collections.Immutable;

namespace WitnessMark.Maths.Graphs;

/// <summary>Things that wait for one another in a ring.</summary>
public static class Rings
{
    /// <summary>
    /// A shortest ring, each waiting for the next and the last for the first; empty when there is none. Breadth first from every
    /// thing, O(n·(n + waits)); of rings as short the one whose beginning is listed first.
    /// </summary>
    /// <param name="among">Each once; only these are looked at.</param>
    /// <param name="waitsFor">What a thing waits for.</param>
    public static ImmutableArray<T> Shortest<T>(IReadOnlyCollection<T> among, Func<T, IEnumerable<T>> waitsFor) where T : notnull
    {
        var looked = among.ToHashSet();
        ImmutableArray<T> best = [];
        foreach (var start in among)
        {
            var ring = Through(start, looked, waitsFor, best.IsEmpty ? int.MaxValue : best.Length);
            if (!ring.IsEmpty) best = ring;
            if (best.Length is 1 or 2) break;
        }
        return best;
    }

    /// <summary>From a thing along what it waits for, until it waits for itself; empty unless shorter than the limit.</summary>
    static ImmutableArray<T> Through<T>(T start, HashSet<T> looked, Func<T, IEnumerable<T>> waitsFor, int limit) where T : notnull
    {
        var cameFrom = new Dictionary<T, T>();
        var front = new List<T> { start };
        for (var length = 1; front.Count > 0 && length < limit; length++)
        {
            var next = new List<T>();
            foreach (var at in front)
                foreach (var then in waitsFor(at).Where(looked.Contains))
                {
                    if (!cameFrom.TryAdd(then, at)) continue;
                    if (then.Equals(start)) return Back(start, cameFrom);
                    next.Add(then);
                }
            front = next;
        }
        return [];
    }

    static ImmutableArray<T> Back<T>(T start, Dictionary<T, T> cameFrom) where T : notnull
    {
        var ring = new List<T>();
        var at = start;
        do
        {
            at = cameFrom[at];
            ring.Add(at);
        }
        while (!at.Equals(start));
        ring.Reverse();
        return [.. ring];
    }
}
