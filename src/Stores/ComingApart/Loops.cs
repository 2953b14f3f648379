using System.Collections.Immutable;

namespace WitnessMark.Stores.ComingApart;

static class Loops
{
    /// <summary>A shortest ring among the parts; each link's waiting part is the one waited for in the link before.</summary>
    /// <param name="among">Only these are looked at: each waits, straight or round about, for a ring.</param>
    /// <param name="waits">What each waits for.</param>
    public static ImmutableArray<RefitLink> Shortest(ImmutableArray<RefitPart> among, ILookup<Guid, RefitLink> waits)
    {
        var held = among.Select(p => p.Id).ToHashSet();
        ImmutableArray<RefitLink> best = [];
        foreach (var part in among)
        {
            var ring = Through(part.Id, held, waits, best.IsEmpty ? int.MaxValue : best.Length);
            if (!ring.IsEmpty) best = ring;
            if (best.Length == 2) break;
        }
        return best;
    }

    /// <summary>Breadth first from a part along what it waits for, until it waits for itself; nothing unless shorter than the limit.</summary>
    static ImmutableArray<RefitLink> Through(Guid start, HashSet<Guid> held, ILookup<Guid, RefitLink> waits, int limit)
    {
        var reached = new Dictionary<Guid, RefitLink>();
        var (front, depth) = (new List<Guid> { start }, 1);
        for (; front.Count > 0 && depth < limit; depth++)
        {
            var next = new List<Guid>();
            foreach (var link in front.SelectMany(id => waits[id]).Where(l => held.Contains(l.First)))
            {
                if (!reached.TryAdd(link.First, link)) continue;
                if (link.First == start) return Ring(start, reached);
                next.Add(link.First);
            }
            front = next;
        }
        return [];
    }

    static ImmutableArray<RefitLink> Ring(Guid start, Dictionary<Guid, RefitLink> reached)
    {
        var ring = new List<RefitLink> { reached[start] };
        while (ring[^1].Then != start) ring.Add(reached[ring[^1].Then]);
        ring.Reverse();
        return [.. ring];
    }
}
