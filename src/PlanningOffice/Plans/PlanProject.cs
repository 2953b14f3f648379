using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Order;

namespace WitnessMark.PlanningOffice.Plans;

/// <summary>
/// Open jobs as a project with shared resources, in slots of half an hour of the person's expected time: a day of waiting is as
/// many slots as he works on an average day. Each job is its own work (the person, its place, its helper) and, where something
/// cures or is sent out, a wait behind it that keeps the place; each milestone is an end of no length that carries the weight.
/// Expected figures only; the odds are for the futures.
/// </summary>
public sealed record PlanProject
{
    /// <summary>Hours.</summary>
    public const double Slot = 0.5;

    /// <summary>Weight of a job's own end, so that of two orders as good the one that finishes things wins.</summary>
    const double Tidy = 1e-4;

    PlanProject(Project project, ImmutableArray<Guid> jobs, ImmutableArray<double> weights) => (Project, Jobs, Weights) = (project, jobs, weights);

    public Project Project { get; }

    /// <summary>The job whose own work is the activity at the same place; the activities behind them are waits and milestones.</summary>
    public ImmutableArray<Guid> Jobs { get; }

    /// <summary>One for each activity.</summary>
    public ImmutableArray<double> Weights { get; }

    /// <exception cref="RefusedException">The jobs wait in a ring, or one needs a place that is not there.</exception>
    public static PlanProject Of(OrderFacts facts, Means means)
    {
        var open = facts.Jobs.Where(j => j.State != JobState.Done).ToList();
        PlanCheck.RefuseRing(open);
        Housed(open, means);
        var perDay = Math.Max(1, Enumerable.Range(0, 28).Average(d => facts.HoursOn(facts.From.AddDays(d))) / Slot);
        var place = open.Select((j, i) => (j.Id, i)).ToDictionary(x => x.Id, x => x.i);
        var waits = open.Where(j => Days.Behind(j) > 0).Select((j, i) => (j.Id, At: open.Count + i)).ToDictionary(x => x.Id, x => x.At);
        var milestones = facts.Milestones.Where(m => m.Weight > 0 && m.Jobs.Any(place.ContainsKey)).ToList();
        var follows = Followers(open, place, waits, milestones);
        ImmutableArray<Activity> activities =
        [
            .. open.Select((j, i) => new Activity(Slots(j.Hours.Spread.Mean * facts.Bias(j)), Needs(j, own: true), [.. follows[i]])
            {
                Release = facts.SuppliesHoldUp ? (int)Math.Ceiling(Days.Before(j, facts.From) * perDay) : 0,
            }),
            .. open.Where(j => waits.ContainsKey(j.Id)).Select(j => new Activity((int)Math.Ceiling(Days.Behind(j) * perDay), Needs(j, own: false), [.. follows[waits[j.Id]]])),
            .. milestones.Select(_ => new Activity(0, [0, 0, 0, 0], [])),
        ];
        var project = Project.Of(activities, [1, means.Bays, means.Benches, 1]).Value;
        ImmutableArray<double> weights = [.. Enumerable.Repeat(Tidy, activities.Length - milestones.Count), .. milestones.Select(m => m.Weight)];
        return new(project, [.. open.Select(j => j.Id)], weights);
    }

    /// <summary>The jobs in the order in which a schedule begins them.</summary>
    public ImmutableArray<Guid> InTurn(Schedule schedule) =>
        [.. Enumerable.Range(0, Jobs.Length).OrderBy(i => schedule.Starts[i]).ThenBy(i => Project.Sequence.IndexOf(i)).Select(i => Jobs[i])];

    static int Slots(double hours) => Math.Max(1, (int)Math.Round(hours / Slot));

    /// <summary>Person, bays, benches, helper.</summary>
    static ImmutableArray<int> Needs(Job job, bool own) =>
        [own ? 1 : 0, job.Needs.Place == WorkPlace.Bay ? 1 : 0, job.Needs.Place == WorkPlace.Bench ? 1 : 0, own && job.Needs.Helper ? 1 : 0];

    static List<int>[] Followers(List<Job> open, Dictionary<Guid, int> place, Dictionary<Guid, int> waits, List<Milestone> milestones)
    {
        var follows = Enumerable.Range(0, open.Count + waits.Count).Select(_ => new List<int>()).ToArray();
        int Over(Guid job) => waits.TryGetValue(job, out var at) ? at : place[job];
        foreach (var (job, at) in waits) follows[place[job]].Add(at);
        foreach (var job in open)
            foreach (var before in job.After.Distinct().Where(place.ContainsKey)) follows[Over(before)].Add(place[job.Id]);
        for (var m = 0; m < milestones.Count; m++)
            foreach (var job in milestones[m].Jobs.Distinct().Where(place.ContainsKey)) follows[Over(job)].Add(open.Count + waits.Count + m);
        return follows;
    }

    static void Housed(List<Job> open, Means means)
    {
        if (means.Bays == 0 && open.Find(j => j.Needs.Place == WorkPlace.Bay) is { } bay)
            throw new RefusedException(Refusal.Of($"place of \"{bay.Title}\"", "bay", "the shop has none: give it a bay, or let the job be done elsewhere"));
        if (means.Benches == 0 && open.Find(j => j.Needs.Place == WorkPlace.Bench) is { } bench)
            throw new RefusedException(Refusal.Of($"place of \"{bench.Title}\"", "bench", "the shop has none: give it a bench, or let the job be done elsewhere"));
    }
}
