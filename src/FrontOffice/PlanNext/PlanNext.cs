using System.Collections.Immutable;
using WitnessMark.FrontOffice.PlanJobs;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Next;
using WitnessMark.PlanningOffice.Plans;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.PlanNext;

/// <summary>A vehicle and its plan.</summary>
public sealed record PlanNextRequest(VehicleTree Tree, ImmutableArray<Job> Jobs, ImmutableArray<Milestone> Milestones)
{
    /// <summary>Own hours as a multiple of what was guessed.</summary>
    public Func<Job, double> Bias { get; init; } = _ => 1;

    /// <summary>Hours the person is expected to work on a day; the usual is <see cref="UsualHours"/> a week, spread evenly.</summary>
    public Func<DateOnly, double> HoursOn { get; init; } = _ => UsualHours / 7;

    /// <summary>Hours a week, common practice for one who works on it in his evenings and Saturdays, while no calendar is kept.</summary>
    public const double UsualHours = 8;

    public ImmutableArray<Guid> PreviousOrder { get; init; } = [];
}

/// <summary>What to do in the time at hand, what to order, and in which order the work goes.</summary>
public static class PlanNext
{
    /// <exception cref="RefusedException">The hours are impossible, or the plan has no order.</exception>
    public static NextList Run(PlanNextRequest request, FreeTime time) =>
        NextJobs.Of(new(request.Jobs, request.Milestones, GoesBack(request.Tree), JobCautions.Of(request.Tree))
        {
            Bias = request.Bias,
            HoursADay = Math.Max(0.1, Enumerable.Range(0, 28).Average(d => request.HoursOn(time.Today.AddDays(d)))),
        }, time);

    /// <summary>Orders whose latest day is past or near.</summary>
    /// <param name="ahead">Days, 0 or more.</param>
    /// <exception cref="RefusedException">The plan has no order.</exception>
    public static ImmutableArray<OrderNow> OrderToday(PlanNextRequest request, DateOnly today, int ahead = 7)
    {
        var needed = Order(request, today, suppliesHoldUp: false).ToDictionary(p => p.Job, p => p.Start);
        return ToOrder.Today(request.Jobs, needed, today, ahead);
    }

    /// <summary>Open jobs in the order of work with expected days; for the odds see the forecast.</summary>
    /// <exception cref="RefusedException">The plan has no order.</exception>
    public static ImmutableArray<PlannedJob> Order(PlanNextRequest request, DateOnly today, bool suppliesHoldUp = true) =>
        PlanOrder.Of(new(request.Jobs, request.Milestones, today, request.HoursOn)
        {
            Bias = request.Bias,
            Previous = request.PreviousOrder,
            SuppliesHoldUp = suppliesHoldUp,
        });

    static Dictionary<Guid, DateOnly> GoesBack(VehicleTree tree) =>
        tree.Samples.Where(s => s.Row.Loan is not null).GroupBy(s => s.Row.PartId).ToDictionary(g => g.Key, g => g.Min(s => s.Row.Loan!.Due));
}
