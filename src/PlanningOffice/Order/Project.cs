using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Order;

/// <summary>
/// Work without interruption. Duration and release in whole slots, needs one per resource for every slot while it runs;
/// successors are places in the project and start no earlier than this ends.
/// </summary>
public sealed record Activity(int Duration, ImmutableArray<int> Needs, ImmutableArray<int> Successors)
{
    /// <summary>It starts no earlier than this slot.</summary>
    public int Release { get; init; }
}

/// <summary>Activities that share renewable resources: hands, bays, benches.</summary>
public sealed record Project
{
    /// <summary>The most that a resource may hold; the profile packs four into a word.</summary>
    public const int LargestCapacity = 32_767;

    public const int MostActivities = 20_000;

    /// <summary>Slots: all durations after the last release.</summary>
    public const int LongestHorizon = 2_000_000;

    Project(ImmutableArray<Activity> activities, ImmutableArray<int> capacities, ImmutableArray<int> sequence) =>
        (Activities, Capacities, Sequence) = (activities, capacities, sequence);

    public ImmutableArray<Activity> Activities { get; }

    public ImmutableArray<int> Capacities { get; }

    /// <summary>Places in an order in which each follows its predecessors.</summary>
    public ImmutableArray<int> Sequence { get; }

    /// <summary>Slots within which the whole project always fits.</summary>
    public int Horizon => Activities.Sum(a => a.Duration) + Activities.Max(a => a.Release);

    /// <param name="firstNumber">The number that the person gives to place 0, for the sentences.</param>
    public static Parsed<Project> Of(ImmutableArray<Activity> activities, ImmutableArray<int> capacities, int firstNumber = 1)
    {
        if (activities.Length is 0 or > MostActivities) return Refusal.Of("jobs", $"{activities.Length}", $"there must be 1 to {MostActivities}");
        for (var r = 0; r < capacities.Length; r++)
            if (capacities[r] is < 0 or > LargestCapacity) return Refusal.Of($"availability of resource {r + 1}", $"{capacities[r]}", $"it must be 0 to {LargestCapacity}");
        for (var i = 0; i < activities.Length; i++)
            if (Wrong(activities[i], $"job {i + firstNumber}", activities.Length, capacities) is { } wrong) return wrong;
        var horizon = activities.Sum(a => (long)a.Duration) + activities.Max(a => a.Release);
        if (horizon > LongestHorizon) return Refusal.Of("durations", $"{horizon}", $"together they must be at most {LongestHorizon} slots");
        return Ordered(activities, capacities, firstNumber);
    }

    static Refusal? Wrong(Activity a, string name, int count, ImmutableArray<int> capacities)
    {
        if (a.Duration < 0) return Refusal.Of($"duration of {name}", $"{a.Duration}", "it must be 0 or more");
        if (a.Release is < 0 or > LongestHorizon) return Refusal.Of($"release of {name}", $"{a.Release}", $"it must be 0 to {LongestHorizon}");
        if (a.Needs.Length != capacities.Length) return Refusal.Of($"needs of {name}", $"{a.Needs.Length}", $"there must be one for each of the {capacities.Length} resources");
        for (var r = 0; r < capacities.Length; r++)
        {
            if (a.Needs[r] < 0) return Refusal.Of($"need of {name} for resource {r + 1}", $"{a.Needs[r]}", "it must be 0 or more");
            if (a.Needs[r] > capacities[r]) return Refusal.Of($"need of {name} for resource {r + 1}", $"{a.Needs[r]}", $"only {capacities[r]} are there, so it could never be done");
        }
        foreach (var s in a.Successors)
            if (s < 0 || s >= count) return Refusal.Of($"successors of {name}", $"{s}", "each must be a job of the project");
        return null;
    }

    static Parsed<Project> Ordered(ImmutableArray<Activity> activities, ImmutableArray<int> capacities, int firstNumber)
    {
        var open = new int[activities.Length];
        foreach (var a in activities)
            foreach (var s in a.Successors) open[s]++;
        var sequence = ImmutableArray.CreateBuilder<int>(activities.Length);
        for (var i = 0; i < open.Length; i++)
            if (open[i] == 0) sequence.Add(i);
        for (var at = 0; at < sequence.Count; at++)
            foreach (var s in activities[sequence[at]].Successors)
                if (--open[s] == 0) sequence.Add(s);
        if (sequence.Count == activities.Length) return new Project(activities, capacities, sequence.ToImmutable());
        return Refusal.Of("successors", Ring(activities, open, firstNumber), "jobs wait for each other in a ring, so none of them can begin");
    }

    /// <summary>A ring in words. What is still open has an open predecessor, so going back from it comes round.</summary>
    static string Ring(ImmutableArray<Activity> activities, int[] open, int firstNumber)
    {
        var before = new int[open.Length];
        for (var i = 0; i < open.Length; i++)
            if (open[i] > 0)
                foreach (var s in activities[i].Successors) before[s] = i;
        var seen = new Dictionary<int, int>();
        var walk = new List<int>();
        for (var at = Array.FindIndex(open, o => o > 0); seen.TryAdd(at, walk.Count); at = before[at]) walk.Add(at);
        var ring = walk.Skip(seen[before[walk[^1]]]).Reverse().Select(i => i + firstNumber).ToList();
        return string.Join(" before ", ring.Append(ring[0]));
    }
}
