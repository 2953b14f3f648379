using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Next;
using WitnessMark.PlanningOffice.Tests.Plans;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Next;

public sealed class ToOrderTests
{
    static readonly DateOnly Today = new(2026, 11, 25);

    [Fact]
    [Truth(Grade.Property, "the latest day is the day needed less a lead time that nine in ten drawn ones do not pass (PERT-beta, by simulation)")]
    public void Nine_in_ten_orders_placed_on_the_latest_day_are_in_time()
    {
        var job = Plan.Job(1, 1) with { Leads = [Plan.Supply(14, 30, 90)] };
        var order = Assert.Single(ToOrder.Today([job], new Dictionary<Guid, DateOnly> { [job.Id] = new(2027, 1, 20) }, Today, 14));
        var (chance, days) = (new Chance(3), order.NeededBy.DayNumber - order.LatestDay.DayNumber);
        var inTime = Enumerable.Range(0, 40_000).Count(_ => order.Lead.Days.Spread.Draw(chance) <= days) / 40_000.0;
        Assert.InRange(inTime, 0.895, 0.915);
    }

    [Fact]
    [Truth(Grade.Published, "for likely = low PERT-beta is Beta(1, 5): its quantile is 1 − (1 − p)^(1/5) (Johnson, Kotz, Balakrishnan, Continuous Univariate Distributions 2, ch. 25)")]
    public void Lead_times_at_the_edge_agree_with_the_closed_form()
    {
        var job = Plan.Job(1, 1) with { Leads = [Plan.Supply(0, 0, 1000)] };
        var order = Assert.Single(ToOrder.Today([job], new Dictionary<Guid, DateOnly> { [job.Id] = Today }, Today));
        Assert.Equal((int)Math.Ceiling(1000 * (1 - Math.Pow(0.1, 0.2))), Today.DayNumber - order.LatestDay.DayNumber);
    }

    [Fact]
    [Truth(Grade.Property, "what is ordered, here, done, or not needed for long is not on the list; the earliest latest day stands first")]
    public void Only_what_presses_is_told()
    {
        Job With(int n, Lead lead) => Plan.Job(n, 1) with { Leads = [lead] };
        Job[] jobs =
        [
            With(1, Plan.Supply(7, 14, 21)), With(2, Plan.Supply(20, 40, 70)), With(3, Plan.Supply(7, 14, 21, Today)), With(4, Plan.Supply(7, 14, 21) with { Here = true }),
            With(5, Plan.Supply(7, 14, 21)) with { State = JobState.Done }, With(6, Plan.Supply(7, 14, 21)),
        ];
        var needed = jobs.ToDictionary(j => j.Id, _ => new DateOnly(2026, 12, 10));
        needed[Plan.Id(6)] = new(2027, 6, 1);
        var orders = ToOrder.Today(jobs, needed, Today);
        Assert.Equal(["job 2", "job 1"], orders.Select(o => o.Job.Title));
        Assert.Equal("Order today \"the linings\": needed about 10 December, it takes up to 8 weeks, about 30 GBP of which 15 now.", orders[0].Words);
    }
}
