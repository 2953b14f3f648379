using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>Jobs that wait for one another in a ring are refused with their names.</summary>
static class Rings
{
    public static void Refuse(IReadOnlyCollection<Job> jobs)
    {
        var byId = jobs.Where(j => j.State != JobState.Done).DistinctBy(j => j.Id).ToDictionary(j => j.Id);
        var open = byId.ToDictionary(j => j.Key, j => j.Value.After.Distinct().Count(byId.ContainsKey));
        var followers = byId.Values.SelectMany(j => j.After.Distinct().Select(p => (p, j.Id))).ToLookup(x => x.p, x => x.Id);
        var ready = new Stack<Guid>(open.Where(o => o.Value == 0).Select(o => o.Key));
        while (ready.TryPop(out var id))
        {
            open.Remove(id);
            foreach (var f in followers[id])
                if (--open[f] == 0) ready.Push(f);
        }
        if (open.Count == 0) return;

        // Every job left waits for one that is left: walking back must come round.
        var walked = new List<Guid>();
        for (var at = open.Keys.First(); ; at = byId[at].After.First(open.ContainsKey))
        {
            if (walked.IndexOf(at) is >= 0 and var i)
                throw new RefusedException(Refusal.Of("jobs before", string.Join(", ", walked.Skip(i).Reverse().Select(id => byId[id].Title)),
                    "each of these waits for the one before it and the first for the last; take one of them out of the ring"));
            walked.Add(at);
        }
    }
}
