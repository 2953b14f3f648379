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
    /// <summary>Of a job's guess, the least that is taken to be left while it is not done, however many hours are logged.</summary>
    public const double LeastLeft = 0.1;

    /// <summary>Null when there is no such vehicle.</summary>
    public static async Task<PlanState?> Open(
        Guid vehicle, IVehicleStore vehicles, IJobStore jobs, IHoursLog hours, DateOnly today, CancellationToken stop = default) =>
        await vehicles.Tree(vehicle, stop) is not { } tree ? null
        : new(tree, await jobs.Jobs(vehicle, stop), [.. (await jobs.Milestones(vehicle, stop)).Select(m => m.Row)],
            (await jobs.Means(vehicle, stop)).Row, (await jobs.Calendar(stop)).Row, (await jobs.Order(vehicle, stop)).Row,
            await hours.History(vehicle, stop), today);

    /// <summary>The jobs with what is logged taken off those in hand, for whatever looks ahead.</summary>
    public ImmutableArray<Job> Ahead
    {
        get
        {
            var (logged, model) = (Logged, Bias);
            return [.. Jobs.Select(j => j.Row).Select(j => j.State != JobState.Done && logged.TryGetValue(j.Id, out var h) ? Less(j, h / Factor(model, j)) : j)];
        }
    }

    /// <summary>How far the person's guesses are out, learnt from done jobs with logged hours.</summary>
    public BiasModel Bias => new(Finished);

    public PlanInput Input => new(Ahead, Milestones, Means, Today) { Priority = InTurn, Calendar = Calendar, Pace = new LearntPace(Bias) };

    public PlanNextRequest Next
    {
        get
        {
            var model = Bias;
            return new(Tree, Ahead, Milestones) { Bias = j => Factor(model, j), HoursOn = Calendar.Expected, PreviousOrder = Order.InTurn };
        }
    }

    public OrderFacts Facts
    {
        get
        {
            var model = Bias;
            return new(Ahead, Milestones, Today, Calendar.Expected) { Previous = Order.InTurn, Bias = j => Factor(model, j) };
        }
    }

    /// <summary>The order as it stands; while none is decided, the planner's rule of thumb.</summary>
    ImmutableArray<Guid> InTurn => Order.InTurn.IsEmpty && PlanCheck.Ring([.. Jobs.Select(j => j.Row)]).IsEmpty ? [.. PlanOrder.Of(Facts).Select(p => p.Job)] : Order.InTurn;

    /// <summary>Hours by job.</summary>
    Dictionary<Guid, double> Logged => Hours.Standing.GroupBy(e => e.JobId).ToDictionary(g => g.Key, g => g.Sum(e => e.Minutes) / 60);

    ImmutableArray<FinishedJob> Finished
    {
        get
        {
            var logged = Logged;
            return
            [
                .. from j in Jobs.Select(j => j.Row)
                   where j.State == JobState.Done && logged.GetValueOrDefault(j.Id) > 0 && j.Hours.Spread.Mean > 0
                   select new FinishedJob(j.Kind, j.SystemId, j.Hours.Spread.Mean, logged[j.Id]),
            ];
        }
    }

    static double Factor(BiasModel model, Job job) => model.Of(job.Kind, job.SystemId).Median;

    /// <param name="hours">Worked, in the hours of the guess.</param>
    static Job Less(Job job, double hours)
    {
        double Left(double guess) => Math.Max(guess * LeastLeft, guess - hours);
        return job with { Hours = new(Left(job.Hours.Low), Left(job.Hours.Likely), Left(job.Hours.High)) };
    }
}
