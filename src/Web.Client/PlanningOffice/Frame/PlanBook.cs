using System.Collections.Immutable;
using WitnessMark.FrontOffice.PlanState;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Plans;
using WitnessMark.Stores;
using WitnessMark.Web.Client.Outbox;

namespace WitnessMark.Web.Client.PlanningOffice.Frame;

/// <summary>The plan of one vehicle as the host has it.</summary>
public sealed record PlanBook(
    VehicleTree Tree, ImmutableArray<Versioned<Job>> Jobs, ImmutableArray<Versioned<Milestone>> Milestones, Versioned<Means> Means,
    Versioned<WorkCalendar> Calendar, Versioned<StandingOrder> Order, HoursHistory Hours, DateOnly Today)
{
    public Guid Vehicle => Tree.Vehicle.Row.Id;

    public ImmutableArray<Job> Rows => [.. Jobs.Select(j => j.Row)];

    public IEnumerable<Job> Open => Jobs.Select(j => j.Row).Where(j => j.State != JobState.Done);

    /// <summary>What is wrong with the plan as a whole.</summary>
    public ImmutableArray<PlanFault> Faults => PlanCheck.Faults(Rows);

    /// <summary>The same as the planning office reads it.</summary>
    public PlanState State => new(Tree, Jobs, [.. Milestones.Select(m => m.Row)], Means.Row, Calendar.Row, Order.Row, Hours, Today);

    public string SystemName(Guid? id) => Tree.Systems.Select(s => s.Row).FirstOrDefault(s => s.Id == id)?.Name ?? "Whole vehicle";

    /// <summary>Jobs by system in the vehicle's own order, the whole vehicle last.</summary>
    public IEnumerable<(string System, ImmutableArray<Versioned<Job>> Jobs)> BySystem() =>
        from id in Tree.Systems.OrderBy(s => s.Row.Order).Select(s => (Guid?)s.Row.Id).Append(null)
        let jobs = Jobs.Where(j => j.Row.SystemId == id).ToImmutableArray()
        where jobs.Length > 0
        select (SystemName(id), jobs);

    /// <summary>Asks until the host answers; null when it refuses.</summary>
    public static async Task<PlanBook?> Fetch(Server server, DeskServer desk, Guid vehicle, DateOnly today)
    {
        // Asked for all at once: the page waits for the slowest and not for the sum.
        var (trees, works, marks) = (Server.Patient(() => server.Tree(vehicle)), Server.Patient(() => server.Jobs(vehicle)), Server.Patient(() => server.Milestones(vehicle)));
        var (given, times, orders, logs) = (Server.Patient(() => server.Means(vehicle)), Server.Patient(desk.Calendar), Server.Patient(() => desk.Order(vehicle)), Server.Patient(() => desk.Hours(vehicle)));
        var (tree, jobs, milestones) = (await trees, await works, await marks);
        var (means, calendar, order, hours) = (await given, await times, await orders, await logs);
        return tree.Value is { } t && means.Value is { Row: not null } m && calendar.Value is { Row: not null } c && hours.Value is { } h && order.Value is { Row: not null } o
            && !jobs.Value.IsDefault && !milestones.Value.IsDefault ? new(t, jobs.Value, milestones.Value, m, c, o, h, today) : null;
    }
}
