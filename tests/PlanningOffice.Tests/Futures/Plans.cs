using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.PlanningOffice.Tests.Futures;

/// <summary>Small plans whose outcome can be worked out by hand.</summary>
static class Plans
{
    /// <summary>A Monday.</summary>
    public static readonly DateOnly Monday = new(2027, 3, 1);

    /// <summary>Two hours on each evening from Monday to Friday and six on Saturday, always.</summary>
    public static readonly WorkCalendar Steady = WorkCalendar.Usual with
    {
        Season = [.. Enumerable.Repeat(1.0, 12)],
        DryChance = [.. Enumerable.Repeat(1.0, 12)],
        VanishChance = 0,
        WeekVariation = 0,
    };

    public static Guid Id(int n) => new(n, 0, 0, [1, 2, 3, 4, 5, 6, 7, 8]);

    public static Job Job(int n, ThreePoint hours, params int[] after) =>
        PlanningOffice.Job.Plain(Id(n), Guid.Empty, null, null, $"job {n}", WorkKind.Make, hours, Cost.None("GBP")) with { After = [.. after.Select(Id)] };

    public static Job Job(int n, double hours, params int[] after) => Job(n, Sure(hours), after);

    public static ThreePoint Sure(double x) => new(x, x, x);

    public static Lead Behind(ThreePoint days) => new("waiting", LeadSide.Behind, days, Cost.None("GBP"), 0, null, false);

    public static Lead Before(ThreePoint days, decimal price = 0, double deposit = 0) =>
        new("stock", LeadSide.Before, days, new(price, price, price, "GBP"), deposit, null, false);

    public static Discovery Hidden(int n, double odds, string cause, double pull, Consequence then, bool? found = null) =>
        new(Id(1000 + n), $"rust {n}", odds, cause, pull, [then], found);

    public static PlanInput Plan(params Job[] jobs) =>
        new([.. jobs], [], Means.Usual(Guid.Empty), Monday) { Calendar = Steady, Pace = new SharedPace(0, 0) };

    public static PlanInput WithMoney(this PlanInput plan, decimal onHand, double eachMonth) =>
        plan with { Means = plan.Means with { Purse = new("GBP", new(Monday, onHand, "saved"), Sure(eachMonth), [], []) } };

    public static Simulation Simulated(PlanInput plan, int futures = 200, ulong seed = 1) => Simulation.Of(plan, seed, futures).Run();

    /// <summary>Finish of a plan in which nothing is left to chance, days from the first morning.</summary>
    public static double Finish(PlanInput plan) => Simulated(plan).Forecast().Finish.Days.P50.Value;
}
