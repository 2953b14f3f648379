using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Plans;

namespace WitnessMark.PlanningOffice.Next;

/// <summary>
/// What to do in the time at hand. Ready jobs that fit are ranked by the first of these that holds, in this order: it is in hand
/// already; it measures or looks at something borrowed that goes back within three weeks; it starts a wait of a week or more (sent out,
/// cure), or stands right before a job that does; an early milestone waits for it, the least work left for its weight first; it is on the longest path to the finish; it is small.
/// Within a rank the longer job that fits comes first, then by title.
/// </summary>
public static class NextJobs
{
    const int MostBlocks = 5;

    /// <exception cref="RefusedException">The hours are impossible, or the jobs wait in a ring.</exception>
    public static NextList Of(NextFacts facts, FreeTime time)
    {
        if (time.Wrong is { } wrong) throw new RefusedException(wrong);
        var open = facts.Jobs.Where(j => j.State != JobState.Done).ToList();
        var reasons = new Reasons(facts, open, time);
        var ready = PlanCheck.Ready(facts.Jobs).ToList();
        var fitting = from j in ready
                      where Fit.Hinders(j, time, facts.Bias(j)) is null
                      let why = reasons.Of(j)
                      orderby why.Rank, why.Within, -Math.Min(j.Hours.Likely * facts.Bias(j), time.Hours), j.Title
                      let stop = Fit.StopAfter(j, time, facts.Bias(j))
                      select new NextJob(j, Sentence(why.Words, stop), stop, facts.Cautions(j));
        return new([.. fitting], Blocks(ready, open, facts, time));
    }

    static string Sentence(string words, Step? stop) =>
        stop is null ? $"{words}." : $"{words}; longer than the time, so stop after step {stop.Number} ({stop.Title}).";

    /// <summary>Ready jobs that cannot be done now, those that most open jobs wait for first.</summary>
    static ImmutableArray<string> Blocks(List<Job> ready, List<Job> open, NextFacts facts, FreeTime time)
    {
        var frees = open.SelectMany(j => j.After.Distinct().Select(a => (a, j.Id))).ToLookup(x => x.a, x => x.Id);
        return
        [
            .. (from j in ready
                let hinders = Fit.Hinders(j, time, facts.Bias(j))
                where hinders is not null
                let behind = Behind(j.Id, frees)
                orderby behind descending, j.Title
                select $"\"{j.Title}\" {hinders}{(behind > 0 ? $"; {behind} {(behind == 1 ? "job waits" : "jobs wait")} behind it" : "")}.").Take(MostBlocks),
        ];
    }

    /// <summary>How many jobs wait for it, near or far.</summary>
    static int Behind(Guid job, ILookup<Guid, Guid> frees)
    {
        var (seen, left) = (new HashSet<Guid>(), new Stack<Guid>(frees[job]));
        while (left.TryPop(out var id))
            if (seen.Add(id))
                foreach (var next in frees[id]) left.Push(next);
        return seen.Count;
    }
}
