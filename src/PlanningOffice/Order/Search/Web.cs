namespace WitnessMark.PlanningOffice.Order.Search;

/// <summary>A project as plain arrays for the inner loops.</summary>
sealed class Web
{
    public Web(Project project, int beyond)
    {
        Count = project.Activities.Length;
        Horizon = project.Horizon + beyond;
        Durations = [.. project.Activities.Select(a => a.Duration)];
        Releases = [.. project.Activities.Select(a => a.Release)];
        Needs = [.. project.Activities.Select(a => a.Needs.ToArray())];
        After = [.. project.Activities.Select(a => a.Successors.Distinct().ToArray())];
        Capacities = [.. project.Capacities];
        Sequence = [.. project.Sequence];
        var before = Enumerable.Range(0, Count).Select(_ => new List<int>()).ToArray();
        for (var i = 0; i < Count; i++)
            foreach (var s in After[i]) before[s].Add(i);
        Before = [.. before.Select(b => b.ToArray())];
        Position = new int[Count];
        for (var at = 0; at < Count; at++) Position[Sequence[at]] = at;
        (Heads, Tails) = (new int[Count], new int[Count]);
        foreach (var i in Sequence) Heads[i] = Before[i].Aggregate(Releases[i], (h, p) => Math.Max(h, Heads[p] + Durations[p]));
        foreach (var i in Sequence.Reverse()) Tails[i] = After[i].Aggregate(0, (t, s) => Math.Max(t, Tails[s] + Durations[s]));
    }

    public int Count { get; }

    /// <summary>Slots within which every schedule fits.</summary>
    public int Horizon { get; }

    public int[] Durations { get; }

    public int[] Releases { get; }

    public int[][] Needs { get; }

    public int[][] Before { get; }

    public int[][] After { get; }

    public int[] Capacities { get; }

    public int[] Sequence { get; }

    /// <summary>Where each activity stands in the sequence.</summary>
    public int[] Position { get; }

    /// <summary>The earliest slot each can start by precedence.</summary>
    public int[] Heads { get; }

    /// <summary>The slots that must follow each after its end.</summary>
    public int[] Tails { get; }
}
