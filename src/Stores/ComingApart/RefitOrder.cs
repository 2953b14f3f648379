using System.Collections.Immutable;
using WitnessMark.Maths.Graphs;

namespace WitnessMark.Stores.ComingApart;

/// <summary>A part that goes back on.</summary>
/// <param name="OffAt">When it came off; null when only an order names it. Settles nothing but ties.</param>
public sealed record RefitPart(Guid Id, string Name, DateTimeOffset? OffAt);

/// <summary><paramref name="Then"/> waits for <paramref name="First"/>.</summary>
public sealed record RefitLink(Guid First, Guid Then, string Because);

/// <param name="Stage">From 0: one more than the highest stage it waits for. Parts of one stage do not wait for each other.</param>
/// <param name="Waits">What it waits for, in the order they go on.</param>
public sealed record RefitStep(RefitPart Part, int Stage, ImmutableArray<RefitLink> Waits);

/// <summary>In which order the parts go back on.</summary>
/// <param name="Steps">Every part that no loop holds up.</param>
/// <param name="Loop">The shortest ring of parts that wait for each other, each waiting for the next; empty when there is none.</param>
/// <param name="HeldUp">Those in a loop or behind one.</param>
public sealed record RefitPlan(ImmutableArray<RefitStep> Steps, ImmutableArray<RefitLink> Loop, ImmutableArray<RefitPart> HeldUp)
{
    /// <summary>Those that can go on now: not on yet, and all they wait for is.</summary>
    public IEnumerable<RefitStep> Ready(IReadOnlySet<Guid> done) =>
        Steps.Where(s => !done.Contains(s.Part.Id) && s.Waits.All(w => done.Contains(w.First)));

    /// <summary>The loop in one sentence, with a way out; null when there is none.</summary>
    public string? LoopWords
    {
        get
        {
            if (Loop.IsEmpty) return null;
            var names = HeldUp.ToDictionary(p => p.Id, p => p.Name);
            var ring = Loop.Select((l, i) => $"{(i == 0 ? $"the {names[l.Then]}" : "which")} waits for the {names[l.First]} (because {l.Because})");
            return $"No order serves: {string.Join(", ", ring)}. Take one of these reasons back.";
        }
    }
}

/// <summary>
/// The refit order: a partial order, set out one part at a time (A. B. Kahn, Topological sorting of large networks,
/// Communications of the ACM 5, 1962). Among those free to go on, the one that came off last goes first, then by name and id:
/// the same entries give the same order.
/// </summary>
public static class RefitOrder
{
    /// <summary>The came-off order turned round, and what must precede on the way back.</summary>
    /// <param name="nameOf">Name of a part; parts that came off or that an order names are asked for.</param>
    public static RefitPlan Of(IEnumerable<OffPart> off, IEnumerable<MustPrecede> precedences, Func<Guid, string> nameOf)
    {
        var all = off.ToList();
        ImmutableArray<RefitLink> links =
        [
            .. all.SelectMany(o => o.After.Select(a => new RefitLink(o.PartId, a, $"the {nameOf(a)} had to come off before the {nameOf(o.PartId)}"))),
            .. precedences.Where(p => !p.Lifted).Select(p => new RefitLink(p.First, p.Then, p.Because)),
        ];
        var at = all.ToDictionary(o => o.PartId, o => o.OffAt);
        var ids = all.Select(o => o.PartId).Concat(links.SelectMany(l => new[] { l.First, l.Then })).Distinct();
        return Of([.. ids.Select(id => new RefitPart(id, nameOf(id), at.TryGetValue(id, out var off) ? off : null))], links);
    }

    /// <param name="parts">Each once, among them both ends of every link.</param>
    public static RefitPlan Of(ImmutableArray<RefitPart> parts, ImmutableArray<RefitLink> links)
    {
        links = [.. links.DistinctBy(l => (l.First, l.Then))];
        var (waits, frees) = (links.ToLookup(l => l.Then), links.ToLookup(l => l.First));
        var byId = parts.ToDictionary(p => p.Id);
        var open = parts.ToDictionary(p => p.Id, p => waits[p.Id].Count());
        var free = new PriorityQueue<RefitPart, RefitPart>(parts.Where(p => open[p.Id] == 0).Select(p => (p, p)), LastOffFirst);
        var placed = new Dictionary<Guid, (int Order, int Stage)>();
        var steps = ImmutableArray.CreateBuilder<RefitStep>(parts.Length);
        while (free.TryDequeue(out var part, out _))
        {
            var stage = waits[part.Id].Select(l => placed[l.First].Stage + 1).DefaultIfEmpty(0).Max();
            placed[part.Id] = (steps.Count, stage);
            steps.Add(new(part, stage, [.. waits[part.Id].OrderBy(l => placed[l.First].Order)]));
            foreach (var link in frees[part.Id])
                if (--open[link.Then] == 0) free.Enqueue(byId[link.Then], byId[link.Then]);
        }
        ImmutableArray<RefitPart> held = [.. parts.Where(p => !placed.ContainsKey(p.Id)).Order(LastOffFirst)];
        return new(steps.ToImmutable(), Loop(held, waits), held);
    }

    static ImmutableArray<RefitLink> Loop(ImmutableArray<RefitPart> held, ILookup<Guid, RefitLink> waits)
    {
        var ring = Rings.Shortest([.. held.Select(p => p.Id)], id => waits[id].Select(l => l.First));
        return [.. ring.Select((id, i) => waits[id].First(l => l.First == ring[(i + 1) % ring.Length]))];
    }

    static readonly Comparer<RefitPart> LastOffFirst = Comparer<RefitPart>.Create((a, b) =>
        Nullable.Compare(b.OffAt, a.OffAt) is not 0 and var later ? later
        : string.CompareOrdinal(a.Name, b.Name) is not 0 and var name ? name : a.Id.CompareTo(b.Id));
}
