using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Plans;

/// <summary>What an order of work is made from.</summary>
/// <param name="HoursOn">Hours the person is expected to work on a day, 0 or more.</param>
public sealed record OrderFacts(ImmutableArray<Job> Jobs, ImmutableArray<Milestone> Milestones, DateOnly From, Func<DateOnly, double> HoursOn)
{
    /// <summary>Jobs in the order of the last plan; they keep it as far as they can, so that a slip moves few.</summary>
    public ImmutableArray<Guid> Previous { get; init; } = [];

    /// <summary>False asks when each job could begin if all supplies were here: the day they are needed by.</summary>
    public bool SuppliesHoldUp { get; init; } = true;

    /// <summary>Own hours as a multiple of what was guessed; 1 while no record says otherwise.</summary>
    public Func<Job, double> Bias { get; init; } = _ => 1;
}

/// <summary>
/// One person, one job at a time, expected figures only: of the jobs that can begin, the one of the last plan first, then the one
/// that an earlier milestone waits for (the heavier the earlier), then the one with least float. The odds are for the futures.
/// </summary>
public static class PlanOrder
{
    /// <summary>Twenty years: further off than any plan means.</summary>
    const int LongestDays = 7305;

    /// <returns>Open jobs in the order they are begun.</returns>
    /// <exception cref="RefusedException">The jobs wait in a ring, or the person's hours do not reach.</exception>
    public static ImmutableArray<PlannedJob> Of(OrderFacts facts)
    {
        var open = facts.Jobs.Where(j => j.State != JobState.Done).ToList();
        var rank = Ranks(facts, open);
        var ids = open.Select(j => j.Id).ToHashSet();
        var holds = open.ToDictionary(j => j.Id, j => j.After.Distinct().Count(ids.Contains));
        var frees = open.SelectMany(j => j.After.Distinct().Select(a => (a, j))).ToLookup(x => x.a, x => x.j);
        var over = new Dictionary<Guid, double>();
        var planned = ImmutableArray.CreateBuilder<PlannedJob>(open.Count);
        var clock = new WorkClock(facts.From, facts.HoursOn, LongestDays);
        // Supplies that are not ordered yet count as ordered on the first day.
        var free = open.Where(j => holds[j.Id] == 0).ToDictionary(j => j.Id, j => (Job: j, From: Release(j, over, facts)));
        while (free.Count > 0)
        {
            var now = Math.Max(clock.Now, free.Values.Min(f => f.From));
            var job = free.Values.Where(f => f.From <= now).MinBy(f => rank[f.Job.Id]).Job;
            var (start, end) = clock.Work(now, job.Hours.Spread.Mean * facts.Bias(job));
            over[job.Id] = end + Days.Behind(job);
            planned.Add(new(job.Id, Day(facts.From, start), Day(facts.From, Math.Max(start, Math.Ceiling(end) - 1)), Day(facts.From, over[job.Id])));
            free.Remove(job.Id);
            foreach (var then in frees[job.Id])
                if (--holds[then.Id] == 0) free.Add(then.Id, (then, Release(then, over, facts)));
        }
        return planned.ToImmutable();
    }

    static double Release(Job job, Dictionary<Guid, double> over, OrderFacts facts) =>
        Math.Max(facts.SuppliesHoldUp ? Days.Before(job, facts.From) : 0, job.After.Select(a => over.GetValueOrDefault(a)).DefaultIfEmpty(0).Max());

    static DateOnly Day(DateOnly from, double days) => from.AddDays((int)Math.Floor(days));

    static Dictionary<Guid, (int Hand, int Last, double Milestone, double Float)> Ranks(OrderFacts facts, List<Job> open)
    {
        var perDay = Math.Max(0.1, Enumerable.Range(0, 28).Average(d => facts.HoursOn(facts.From.AddDays(d))));
        var path = CriticalPath.Of(open, j => j.Hours.Spread.Mean * facts.Bias(j) / perDay + Days.Behind(j)).ToDictionary(p => p.Job);
        var last = facts.Previous.Select((id, i) => (id, i)).DistinctBy(x => x.id).ToDictionary(x => x.id, x => x.i);
        var towards = Towards(facts.Milestones, open);
        return open.ToDictionary(j => j.Id, j => (
            j.State == JobState.InHand ? 0 : 1, last.GetValueOrDefault(j.Id, int.MaxValue), -towards.GetValueOrDefault(j.Id), path[j.Id].Float));
    }

    /// <summary>For each job, weight per hour still to come of the best milestone that waits for it.</summary>
    static Dictionary<Guid, double> Towards(ImmutableArray<Milestone> milestones, List<Job> open)
    {
        var best = new Dictionary<Guid, double>();
        foreach (var m in milestones)
        {
            var all = Upstream.Of(m.Jobs, open);
            var worth = m.Weight / Math.Max(0.1, all.Sum(j => j.Hours.Spread.Mean));
            foreach (var j in all) best[j.Id] = Math.Max(best.GetValueOrDefault(j.Id), worth);
        }
        return best;
    }
}
