using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Order;

/// <summary>The slot in which each activity of a project starts.</summary>
public sealed record Schedule(ImmutableArray<int> Starts)
{
    /// <summary>The slot by which all is done.</summary>
    public int Makespan(Project project)
    {
        var end = 0;
        for (var i = 0; i < Starts.Length; i++) end = Math.Max(end, Starts[i] + project.Activities[i].Duration);
        return end;
    }

    /// <summary>Why the schedule cannot be worked; null when it can.</summary>
    public Refusal? Wrong(Project project)
    {
        if (Starts.Length != project.Activities.Length) return Refusal.Of("starts", $"{Starts.Length}", $"there must be one for each of the {project.Activities.Length} jobs");
        for (var i = 0; i < Starts.Length; i++)
        {
            var a = project.Activities[i];
            if (Starts[i] < a.Release) return Refusal.Of($"start of job {i + 1}", $"{Starts[i]}", $"it may not start before {a.Release}");
            foreach (var s in a.Successors)
                if (Starts[s] < Starts[i] + a.Duration) return Refusal.Of($"start of job {s + 1}", $"{Starts[s]}", $"job {i + 1} before it ends at {Starts[i] + a.Duration}");
        }
        return Overdrawn(project);
    }

    Refusal? Overdrawn(Project project)
    {
        for (var r = 0; r < project.Capacities.Length; r++)
        {
            var change = new SortedDictionary<int, long>();
            for (var i = 0; i < Starts.Length; i++)
            {
                var a = project.Activities[i];
                change[Starts[i]] = change.GetValueOrDefault(Starts[i]) + a.Needs[r];
                change[Starts[i] + a.Duration] = change.GetValueOrDefault(Starts[i] + a.Duration) - a.Needs[r];
            }
            var used = 0L;
            foreach (var (slot, by) in change)
                if ((used += by) > project.Capacities[r]) return Refusal.Of($"resource {r + 1} in slot {slot}", $"{used}", $"only {project.Capacities[r]} are there");
        }
        return null;
    }
}
