using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Plans;

namespace WitnessMark.PlanningOffice.Next;

/// <summary>
/// What to do in the time at hand. Ready jobs that fit are ranked by the first of these that holds, in this order: it is in hand
/// already; its part goes back to a lender within three weeks; it starts a wait of a week or more (sent out, cure); an early
/// milestone waits for it, the least work left for its weight first; it is on the longest path to the finish; it is small.
/// Within a rank the longer job that fits comes first, then by title.
/// </summary>
public static class NextJobs
{
    const int LoanDays = 21;
    const double LongWaitDays = 7;
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

    /// <summary>Why a job comes where it does.</summary>
    sealed class Reasons
    {
        readonly NextFacts _facts;
        readonly FreeTime _time;
        readonly HashSet<Guid> _critical;
        readonly List<(Milestone Milestone, double Left, HashSet<Guid> Jobs)> _milestones;

        public Reasons(NextFacts facts, List<Job> open, FreeTime time)
        {
            (_facts, _time) = (facts, time);
            _critical = [.. CriticalPath.Of(open, j => j.Hours.Spread.Mean * facts.Bias(j)).Where(p => p.Critical).Select(p => p.Job)];
            _milestones =
            [
                .. from m in facts.Milestones
                   where m.Weight > 0
                   let all = Upstream.Of(m.Jobs, open)
                   where all.Count > 0
                   let left = all.Sum(j => j.Hours.Spread.Mean * facts.Bias(j))
                   orderby left / m.Weight
                   select (m, left, all.Select(j => j.Id).ToHashSet()),
            ];
        }

        public (int Rank, double Within, string Words) Of(Job j)
        {
            if (j.State == JobState.InHand) return (0, 0, j.Needs.Place == WorkPlace.Anywhere ? "It is in hand: finish what is begun"
                : $"It is in hand and holds the {(j.Needs.Place == WorkPlace.Bay ? "bay" : "bench")}: finish what is begun");
            if (j.PartId is { } part && _facts.GoesBack.TryGetValue(part, out var back) && back.DayNumber - _time.Today.DayNumber is <= LoanDays and var days)
                return (1, days, days < 0 ? $"The part was due back on {back:yyyy-MM-dd}" : $"The part goes back on {back:yyyy-MM-dd}");
            if (Days.Behind(j) is >= LongWaitDays and var wait)
                return (2, -wait, $"It starts a wait of about {wait:0} days that runs while you do other things");
            var at = _milestones.FindIndex(m => m.Jobs.Contains(j.Id));
            if (at >= 0) return (3, at, $"\"{_milestones[at].Milestone.Name}\" waits for it, {_milestones[at].Left:0} hours away");
            if (_critical.Contains(j.Id)) return (4, 0, "It lies on the longest path to the finish");
            return j.Hours.High * _facts.Bias(j) <= _time.Hours ? (5, 0, "A small win: over within the time even if it goes badly") : (6, 0, "It is ready and it fits");
        }
    }
}
