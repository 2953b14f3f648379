using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>A piece of work that begins when all its predecessors have ended.</summary>
public sealed record Activity(string Id, ImmutableArray<string> Predecessors, Duration Duration);

/// <summary>
/// Work bound by precedence only: no shared tools or hands. Activities stand in an order in which each follows its
/// predecessors.
/// </summary>
public sealed record Network
{
    Network(ImmutableArray<Activity> activities, ImmutableArray<ImmutableArray<int>> before) =>
        (Activities, Before) = (activities, before);

    public ImmutableArray<Activity> Activities { get; }

    /// <summary>For each activity the places of its predecessors, all smaller than its own.</summary>
    public ImmutableArray<ImmutableArray<int>> Before { get; }

    public static Parsed<Network> Of(ImmutableArray<Activity> activities)
    {
        if (activities.IsEmpty) return Refusal.Of("activities", null, "at least one is needed");
        var byId = new Dictionary<string, Activity>();
        foreach (var a in activities)
        {
            if (!byId.TryAdd(a.Id, a)) return Refusal.Of("activity id", a.Id, "each activity needs an id of its own");
            if (a.Duration.Wrong is { } wrong) return new Refusal($"activity {a.Id}, {wrong.Sentence}");
        }
        foreach (var a in activities)
            foreach (var p in a.Predecessors)
                if (!byId.ContainsKey(p)) return Refusal.Of($"predecessor of {a.Id}", p, "it must be an activity of this network");
        return Ordered(activities);
    }

    /// <summary>Kahn's order: take what has no open predecessor until nothing is left; what remains stands in a ring.</summary>
    static Parsed<Network> Ordered(ImmutableArray<Activity> activities)
    {
        var place = new Dictionary<string, int>();
        var ordered = ImmutableArray.CreateBuilder<Activity>(activities.Length);
        var followers = activities.SelectMany(a => a.Predecessors.Distinct().Select(p => (p, a))).ToLookup(x => x.p, x => x.a);
        var open = activities.ToDictionary(a => a.Id, a => a.Predecessors.Distinct().Count());
        var ready = new Queue<Activity>(activities.Where(a => open[a.Id] == 0));
        while (ready.TryDequeue(out var a))
        {
            place[a.Id] = ordered.Count;
            ordered.Add(a);
            foreach (var f in followers[a.Id])
                if (--open[f.Id] == 0) ready.Enqueue(f);
        }
        if (ordered.Count < activities.Length)
        {
            var ring = activities.First(a => open[a.Id] > 0);
            return Refusal.Of("predecessors", string.Join(", ", ring.Predecessors), $"{ring.Id} would have to wait for itself; break the ring");
        }
        return new Network(ordered.ToImmutable(), [.. ordered.Select(a => a.Predecessors.Distinct().Select(p => place[p]).ToImmutableArray())]);
    }
}
