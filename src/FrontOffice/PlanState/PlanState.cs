using System.Collections.Immutable;
using WitnessMark.FrontOffice.PlanNext;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.PlanningOffice.Plans;
using WitnessMark.Stores;

namespace WitnessMark.FrontOffice.PlanState;

/// <summary>All that the records say of one vehicle's plan, and what each part of the planning office is told of it.</summary>
public sealed record PlanState(
    VehicleTree Tree, ImmutableArray<Versioned<Job>> Jobs, ImmutableArray<Milestone> Milestones, Means Means,
    WorkCalendar Calendar, StandingOrder Order, HoursHistory Hours, DateOnly Today)
{
    /// <summary>Null when there is no such vehicle.</summary>
    public static async Task<PlanState?> Open(
        Guid vehicle, IVehicleStore vehicles, IJobStore jobs, IHoursLog hours, DateOnly today, CancellationToken stop = default) =>
        await vehicles.Tree(vehicle, stop) is not { } tree ? null
        : new(tree, await jobs.Jobs(vehicle, stop), [.. (await jobs.Milestones(vehicle, stop)).Select(m => m.Row)],
            (await jobs.Means(vehicle, stop)).Row, (await jobs.Calendar(stop)).Row, (await jobs.Order(vehicle, stop)).Row,
            await hours.History(vehicle, stop), today);

    /// <summary>How far the person's guesses are out, learnt from done jobs with logged hours.</summary>
    public BiasModel Bias => new(Finished);

    /// <summary>What the futures are made from; the jobs with what is logged taken off.</summary>
    public PlanInput Input
    {
        get
        {
            var model = Bias;
            var facts = FactsBy(model);
            return new(facts.Jobs, Milestones, Means, Today) { Priority = InTurn(facts), Calendar = Calendar, Pace = new LearntPace(model) };
        }
    }

    public PlanNextRequest Next
    {
        get
        {
            var facts = Facts;
            return new(Tree, facts.Jobs, Milestones) { Bias = facts.Bias, HoursOn = facts.HoursOn, PreviousOrder = facts.Previous };
        }
    }

    public OrderFacts Facts => FactsBy(Bias);

    OrderFacts FactsBy(BiasModel model)
    {
        var logged = HoursWorked.ByJob(Hours.Standing);
        ImmutableArray<Job> ahead = [.. Jobs.Select(j => j.Row).Select(j => j.State != JobState.Done && logged.TryGetValue(j.Id, out var h) ? Left(j, h, model) : j)];
        return new(ahead, Milestones, Today, Calendar.Expected) { Previous = Order.InTurn, Bias = model.Medians() };
    }

    /// <summary>The order as it stands; while none is decided, the planner's rule of thumb.</summary>
    static ImmutableArray<Guid> InTurn(OrderFacts facts) =>
        facts.Previous.IsEmpty && PlanCheck.Ring(facts.Jobs).IsEmpty ? [.. PlanOrder.Of(facts).Select(p => p.Job)] : facts.Previous;

    /// <summary>Jobs done of which hours were logged.</summary>
    public ImmutableArray<FinishedJob> Finished => FinishedJobs.Of(Jobs.Select(j => j.Row), Hours);

    /// <summary>The share of the job that is still to come by its middle course, given what is logged.</summary>
    static Job Left(Job job, double logged, BiasModel model)
    {
        if (job.Hours.Spread.Mean is not (> 0 and var guess)) return job;
        var pace = model.OneJob(job.Kind, job.SystemId);
        return job with { Hours = job.Hours * (Remaining.Of(guess, logged, pace).P50 / Remaining.Of(guess, 0, pace).P50) };
    }
}
