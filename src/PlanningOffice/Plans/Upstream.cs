namespace WitnessMark.PlanningOffice.Plans;

/// <summary>What must be over before something is reached.</summary>
public static class Upstream
{
    /// <summary>The jobs named and all they wait for, each once, out of those given.</summary>
    public static List<Job> Of(IEnumerable<Guid> named, IReadOnlyCollection<Job> among)
    {
        var byId = among.ToDictionary(j => j.Id);
        var (seen, left) = (new HashSet<Guid>(), new Stack<Guid>(named));
        var found = new List<Job>();
        while (left.TryPop(out var id))
        {
            if (!seen.Add(id) || !byId.TryGetValue(id, out var job)) continue;
            found.Add(job);
            foreach (var a in job.After) left.Push(a);
        }
        return found;
    }
}
