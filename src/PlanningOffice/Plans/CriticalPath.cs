using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Plans;

/// <summary>A job in the critical-path method; all times from the beginning, in the unit of the durations.</summary>
/// <param name="Float">Total float: how far it can slip before the whole does.</param>
public sealed record PathJob(Guid Job, double EarliestStart, double EarliestFinish, double LatestStart, double LatestFinish, double Float)
{
    /// <summary>Rounding of sums of durations, in their unit.</summary>
    const double Rounding = 1e-9;

    public bool Critical => Float <= Rounding;
}

/// <summary>
/// The critical-path method (J. E. Kelley and M. R. Walker, Critical-path planning and scheduling, 1959): earliest and latest
/// times with nobody and nothing scarce.
/// </summary>
public static class CriticalPath
{
    /// <param name="jobs">Predecessors that are not among them hold nothing up.</param>
    /// <param name="duration">0 or more, any unit.</param>
    /// <returns>In an order in which each job stands behind those it waits for.</returns>
    /// <exception cref="RefusedException">The jobs wait for each other in a ring, or a duration is impossible.</exception>
    public static ImmutableArray<PathJob> Of(IReadOnlyList<Job> jobs, Func<Job, double> duration)
    {
        var order = InTurn(jobs);
        var takes = order.ToDictionary(j => j.Id, j => Checked(j, duration(j)));
        var (early, late) = (new Dictionary<Guid, double>(), new Dictionary<Guid, double>());
        foreach (var j in order) early[j.Id] = j.After.Where(early.ContainsKey).Select(a => early[a] + takes[a]).DefaultIfEmpty(0).Max();
        var end = order.Select(j => early[j.Id] + takes[j.Id]).DefaultIfEmpty(0).Max();
        foreach (var j in order.Reverse())
        {
            var finish = late.GetValueOrDefault(j.Id, end);
            late[j.Id] = finish;
            foreach (var a in j.After.Where(takes.ContainsKey)) late[a] = Math.Min(late.GetValueOrDefault(a, end), finish - takes[j.Id]);
        }
        return [.. order.Select(j => new PathJob(
            j.Id, early[j.Id], early[j.Id] + takes[j.Id], late[j.Id] - takes[j.Id], late[j.Id], Math.Max(0, late[j.Id] - takes[j.Id] - early[j.Id])))];
    }

    /// <summary>Each job behind those it waits for, otherwise as given.</summary>
    /// <exception cref="RefusedException">They wait for each other in a ring.</exception>
    public static ImmutableArray<Job> InTurn(IReadOnlyList<Job> jobs)
    {
        if (jobs.GroupBy(j => j.Id).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new RefusedException(Refusal.Of("jobs", twice.First().Title, "a job may stand on the list once"));
        PlanCheck.RefuseRing(jobs);
        var byId = jobs.ToDictionary(j => j.Id);
        var open = jobs.ToDictionary(j => j.Id, j => j.After.Distinct().Count(byId.ContainsKey));
        var frees = jobs.SelectMany(j => j.After.Distinct().Select(a => (a, j.Id))).ToLookup(x => x.a, x => x.Id);
        var place = jobs.Select((j, i) => (j.Id, i)).ToDictionary(x => x.Id, x => x.i);
        var free = new PriorityQueue<Guid, int>(jobs.Where(j => open[j.Id] == 0).Select(j => (j.Id, place[j.Id])));
        var order = ImmutableArray.CreateBuilder<Job>(jobs.Count);
        while (free.TryDequeue(out var id, out _))
        {
            order.Add(byId[id]);
            foreach (var then in frees[id])
                if (--open[then] == 0) free.Enqueue(then, place[then]);
        }
        return order.ToImmutable();
    }

    static double Checked(Job job, double d) => double.IsFinite(d) && d >= 0 ? d
        : throw new RefusedException(Refusal.Of($"duration of \"{job.Title}\"", $"{d}", "give a number from 0 up"));
}
