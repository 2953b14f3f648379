using System.Collections.Immutable;
using WitnessMark.FrontOffice.PlanNext;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.PlanningOffice.Plans;
using WitnessMark.Stores;
using WitnessMark.Web.Client.Outbox;

namespace WitnessMark.Web.Client.PlanningOffice.Frame;

/// <summary>The plan of one vehicle as the host has it.</summary>
public sealed record PlanBook(
    VehicleTree Tree, ImmutableArray<Versioned<Job>> Jobs, ImmutableArray<Versioned<Milestone>> Milestones, Versioned<Means> Means,
    Versioned<WorkCalendar> Calendar, HoursHistory Hours)
{
    public Guid Vehicle => Tree.Vehicle.Row.Id;

    public ImmutableArray<Job> Rows => [.. Jobs.Select(j => j.Row)];

    public IEnumerable<Job> Open => Jobs.Select(j => j.Row).Where(j => j.State != JobState.Done);

    /// <summary>What is wrong with the plan as a whole.</summary>
    public ImmutableArray<PlanFault> Faults => PlanCheck.Faults(Rows);

    /// <summary>Own hours as a multiple of the guess are those learnt so far; the hours of a day those the calendar expects.</summary>
    public PlanNextRequest Next
    {
        get
        {
            var (pace, factors) = (Pace, new Dictionary<PaceGroup, double>());
            return new(Tree, Rows, [.. Milestones.Select(m => m.Row)]) { HoursOn = Calendar.Row.Expected, Bias = Factor };

            double Factor(Job job)
            {
                var group = new PaceGroup(job.Kind, job.SystemId);
                if (factors.TryGetValue(group, out var factor)) return factor;
                var (kind, system) = LearntPace.Named(group);
                return factors[group] = pace.Of(kind, system).Median;
            }
        }
    }

    /// <summary>Jobs done of which hours were logged.</summary>
    public ImmutableArray<FinishedJob> Finished
    {
        get
        {
            var taken = Hours.Standing.GroupBy(e => e.JobId).ToDictionary(g => g.Key, g => g.Sum(e => e.Minutes) / 60);
            return
            [
                .. from j in Rows
                   where j.State == JobState.Done && taken.ContainsKey(j.Id) && j.Hours.Spread.Mean > 0
                   let named = LearntPace.Named(new(j.Kind, j.SystemId))
                   select new FinishedJob(named.Kind, named.System, j.Hours.Spread.Mean, taken[j.Id]),
            ];
        }
    }

    public BiasModel Pace => new(Finished);

    public string SystemName(Guid? id) => Tree.Systems.Select(s => s.Row).FirstOrDefault(s => s.Id == id)?.Name ?? "Whole vehicle";

    /// <summary>Jobs by system in the vehicle's own order, the whole vehicle last.</summary>
    public IEnumerable<(string System, ImmutableArray<Versioned<Job>> Jobs)> BySystem() =>
        from id in Tree.Systems.OrderBy(s => s.Row.Order).Select(s => (Guid?)s.Row.Id).Append(null)
        let jobs = Jobs.Where(j => j.Row.SystemId == id).ToImmutableArray()
        where jobs.Length > 0
        select (SystemName(id), jobs);

    /// <summary>Asks until the host answers; null when it refuses.</summary>
    public static async Task<PlanBook?> Fetch(Server server, DeskServer desk, Guid vehicle)
    {
        var tree = await Server.Patient(() => server.Tree(vehicle));
        var jobs = await Server.Patient(() => server.Jobs(vehicle));
        var milestones = await Server.Patient(() => server.Milestones(vehicle));
        var means = await Server.Patient(() => server.Means(vehicle));
        var calendar = await Server.Patient(desk.Calendar);
        var hours = await Server.Patient(() => desk.Hours(vehicle));
        return tree.Value is { } t && means.Value is { Row: not null } m && calendar.Value is { Row: not null } c && hours.Value is { } h
            && !jobs.Value.IsDefault && !milestones.Value.IsDefault ? new(t, jobs.Value, milestones.Value, m, c, h) : null;
    }
}
