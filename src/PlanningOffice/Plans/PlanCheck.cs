using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Graphs;

namespace WitnessMark.PlanningOffice.Plans;

/// <summary>What is wrong with a set of jobs as a whole; a job's own figures are checked by <see cref="Job.Wrong"/>.</summary>
public static class PlanCheck
{
    /// <summary>Impossible figures, unknown jobs, a ring of waiting, and jobs done out of turn.</summary>
    public static ImmutableArray<PlanFault> Faults(IReadOnlyList<Job> jobs)
    {
        var byId = jobs.DistinctBy(j => j.Id).ToDictionary(j => j.Id);
        return
        [
            .. jobs.GroupBy(j => j.Id).Where(g => g.Count() > 1).Select(g => new PlanFault($"\"{g.First().Title}\" stands {g.Count()} times under one id; keep one.", [g.Key], true)),
            .. jobs.Where(j => j.Wrong is not null).Select(j => new PlanFault(j.Wrong!.Sentence, [j.Id], true)),
            .. from j in jobs
               where !j.After.IsDefault
               from a in j.After
               where !byId.ContainsKey(a)
               select new PlanFault($"\"{j.Title}\" waits for a job that is not on the list ({a}); add it or take the waiting away.", [j.Id], true),
            .. Ring(jobs) is { IsEmpty: false } ring ? [new PlanFault(RingWords(ring), [.. ring.Select(j => j.Id)], true)] : Array.Empty<PlanFault>(),
            .. OutOfTurn(jobs, byId),
        ];
    }

    /// <summary>Open jobs that wait for no other job, in the order given. A supply that is not here still holds them: see <see cref="Supplied"/>.</summary>
    public static IEnumerable<Job> Ready(IReadOnlyList<Job> jobs)
    {
        var open = jobs.Where(j => j.State != JobState.Done).Select(j => j.Id).ToHashSet();
        return jobs.Where(j => j.State != JobState.Done && !j.After.Any(open.Contains));
    }

    /// <summary>All that the job needs before it begins is here.</summary>
    public static bool Supplied(Job job) => job.Leads.All(l => l.Side != LeadSide.Before || l.Here);

    /// <summary>The shortest ring of jobs that wait for each other, each for the next; empty when there is none.</summary>
    public static ImmutableArray<Job> Ring(IReadOnlyList<Job> jobs)
    {
        var byId = jobs.DistinctBy(j => j.Id).Where(j => !j.After.IsDefault).ToDictionary(j => j.Id);
        return [.. Rings.Shortest(Unplaceable(byId), id => byId[id].After).Select(id => byId[id])];
    }

    /// <exception cref="RefusedException">The jobs wait in a ring, told by their titles.</exception>
    public static void RefuseRing(IReadOnlyList<Job> jobs)
    {
        if (Ring(jobs) is { IsEmpty: false } ring) throw new RefusedException(new(RingWords(ring)));
    }

    /// <summary>Those in a ring or behind one.</summary>
    static HashSet<Guid> Unplaceable(Dictionary<Guid, Job> byId)
    {
        var open = byId.Values.ToDictionary(j => j.Id, j => j.After.Distinct().Count(byId.ContainsKey));
        var frees = byId.Values.SelectMany(j => j.After.Distinct().Select(a => (a, j.Id))).ToLookup(x => x.a, x => x.Id);
        var free = new Queue<Guid>(open.Where(o => o.Value == 0).Select(o => o.Key));
        while (free.TryDequeue(out var id))
        {
            open.Remove(id);
            foreach (var then in frees[id])
                if (open.ContainsKey(then) && --open[then] == 0) free.Enqueue(then);
        }
        return [.. open.Keys];
    }

    static string RingWords(ImmutableArray<Job> ring)
    {
        var waits = ring.Select((j, i) => $"{(i == 0 ? $"\"{j.Title}\"" : "which")} waits for \"{ring[(i + 1) % ring.Length].Title}\"");
        return $"No order serves: {string.Join(", ", waits)}. Take one of these waitings away.";
    }

    static IEnumerable<PlanFault> OutOfTurn(IReadOnlyList<Job> jobs, Dictionary<Guid, Job> byId) =>
        from j in jobs
        where j.State == JobState.Done && !j.After.IsDefault
        from a in j.After
        where byId.TryGetValue(a, out var before) && before.State != JobState.Done
        select new PlanFault($"\"{j.Title}\" is done although \"{byId[a].Title}\" before it is not; tick that off, or look again.", [j.Id, a], false);
}
