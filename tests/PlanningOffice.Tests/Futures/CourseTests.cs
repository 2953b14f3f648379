using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Futures;

/// <summary>Day 0 is a Monday; an evening's work ends at the end of its day, a Saturday's at half past it (day 5.5).</summary>
public sealed class CourseTests
{
    [Fact]
    [Truth(Grade.Property, "worked by hand: 2 h on five evenings and 6 h on Saturday")]
    public void Hours_are_worked_as_the_week_gives_them()
    {
        Assert.Equal(1, Plans.Finish(Plans.Plan(Plans.Job(1, 2))), 4);
        Assert.Equal(3, Plans.Finish(Plans.Plan(Plans.Job(1, 6))), 4);
        Assert.Equal(5.5, Plans.Finish(Plans.Plan(Plans.Job(1, 16))), 4);
        Assert.Equal(8, Plans.Finish(Plans.Plan(Plans.Job(1, 18))), 4);
        Assert.Equal(8, Plans.Finish(Plans.Plan(Plans.Job(1, 9), Plans.Job(2, 9))), 4);
    }

    [Fact]
    [Truth(Grade.Property, "worked by hand: noise and daylight only on Saturday; other work goes on in the evenings")]
    public void Daylight_work_waits_for_the_day_and_lets_other_work_pass()
    {
        var light = Plans.Job(1, 6) with { Needs = Needs.None with { Daylight = true } };
        Assert.Equal(5.5, Plans.Finish(Plans.Plan(light)), 4);
        var run = Plans.Simulated(Plans.Plan(light, Plans.Job(2, 4))).Forecast();
        Assert.Equal(Plans.Monday, run.Bars[1].Start.P50);
        Assert.Equal(5.5, run.Finish.Days.P50.Value, 4);
    }

    [Fact]
    [Truth(Grade.Property, "worked by hand: 2 h end with day 0, 10 days of curing from day 1 to day 11, 2 h that evening")]
    public void Followers_wait_for_a_cure() =>
        Assert.Equal(12, Plans.Finish(Plans.Plan(Plans.Job(1, 2) with { Leads = [Plans.Behind(Plans.Sure(10))] }, Plans.Job(2, 2, 1))), 4);

    [Fact]
    [Truth(Grade.Property, "worked by hand: the one bench is taken until the cure is over; a second lets both cure together")]
    public void A_bench_is_taken_until_the_cure_is_over()
    {
        var job = Plans.Job(1, 2) with { Needs = Needs.None with { Place = WorkPlace.Bench }, Leads = [Plans.Behind(Plans.Sure(10))] };
        var plan = Plans.Plan(job, job with { Id = Plans.Id(2), Title = "job 2" });
        Assert.Equal(22, Plans.Finish(plan), 4);
        Assert.Equal(12, Plans.Finish(plan with { Means = plan.Means with { Benches = 2 } }), 4);
    }

    [Fact]
    [Truth(Grade.Property, "worked by hand: ordered on day 7, 10 days, worked on the evening of day 17 (Thursday)")]
    public void A_supply_comes_its_days_after_the_ordering()
    {
        var plan = Plans.Plan(Plans.Job(1, 2) with { Leads = [Plans.Before(Plans.Sure(10))] });
        Assert.Equal(11, Plans.Finish(plan), 4);
        Assert.Equal(18, Plans.Finish(plan with { Orders = [new(Plans.Id(1), 0, Plans.Monday.AddDays(7))] }), 4);
    }

    [Fact]
    [Truth(Grade.Property, "worked by hand: 100 on hand and 100 each month from 1 April (day 31) pay 300 on 1 May (day 61), a Saturday")]
    public void A_job_that_cannot_be_paid_waits_for_money()
    {
        var dear = Plans.Job(1, 2) with { Cost = new(300, 300, 300, "GBP") };
        var forecast = Plans.Simulated(Plans.Plan(dear).WithMoney(100, 100)).Forecast();
        Assert.Equal(61 + 1.0 / 6, forecast.Finish.Days.P50.Value, 4);
        Assert.Equal((1, 0.0), (forecast.Cash.OddsOfDry, forecast.Cash.Dry!.Days.P50.Value));
        Assert.Equal([100.0, 200.0], forecast.Cash.Months.Take(2).Select(m => m.P50));
        Assert.Equal(300, forecast.Money.P50.Value, 3);
        Assert.Equal(1, Plans.Finish(Plans.Plan(dear)), 4);
    }

    [Fact]
    [Truth(Grade.Property, "worked by hand: a deposit of 50 today, the other 150 when it is here on day 10 has to wait for 1 April (day 31)")]
    public void A_deposit_is_paid_at_ordering_and_the_rest_on_arrival()
    {
        var plan = Plans.Plan(Plans.Job(1, 2) with { Leads = [Plans.Before(Plans.Sure(10), 200, 0.25)] }).WithMoney(100, 100);
        var forecast = Plans.Simulated(plan).Forecast();
        Assert.Equal(32, forecast.Finish.Days.P50.Value, 4);
        Assert.Equal(10, forecast.Cash.Dry!.Days.P50.Value, 4);
        Assert.Equal(50, forecast.Cash.Months[0].P50, 4);
    }

    [Fact]
    [Truth(Grade.Property, "worked by hand: prices at the rate; the later of two rates counts")]
    public void Other_currencies_are_paid_at_their_rate()
    {
        var plan = Plans.Plan(Plans.Job(1, 2) with { Cost = new(100, 100, 100, "EUR") });
        Assert.Contains("\"EUR\"", Assert.Throws<RefusedException>(() => Plans.Simulated(plan)).Message);
        var purse = plan.Means.Purse with { Rates = [new("EUR", 0.9, Plans.Monday), new("EUR", 0.8, Plans.Monday.AddDays(-90))] };
        Assert.Equal(90, Plans.Simulated(plan with { Means = plan.Means with { Purse = purse } }).Forecast().Money.P50.Value, 3);
    }

    [Fact]
    [Truth(Grade.Property, "worked by hand: 10 of 20 days have passed, so 10 remain; what is overdue comes today, with a caution")]
    public void An_order_on_its_way_counts_from_its_day()
    {
        Lead lead(int daysAgo) => Plans.Before(Plans.Sure(20)) with { Ordered = Plans.Monday.AddDays(-daysAgo) };
        Assert.Equal(11, Plans.Finish(Plans.Plan(Plans.Job(1, 2) with { Leads = [lead(10)] })), 4);
        var late = Plans.Simulated(Plans.Plan(Plans.Job(1, 2) with { Leads = [lead(50) with { Days = new(10, 20, 30) }] })).Forecast();
        Assert.Equal(1, late.Finish.Days.P50.Value, 4);
        Assert.Contains(late.Cautions, c => c.Contains("longest lead time"));
    }

    [Fact]
    [Truth(Grade.Property, "worked by hand: the priority list decides between ready jobs; the chain that waits longest drives the finish")]
    public void Priority_and_criticality_are_as_worked_by_hand()
    {
        var plan = Plans.Plan(Plans.Job(1, 2), Plans.Job(2, 2) with { Leads = [Plans.Behind(Plans.Sure(30))] }, Plans.Job(3, 2, 2)) with { Priority = [Plans.Id(2)] };
        var forecast = Plans.Simulated(plan).Forecast();
        Assert.Equal([2, 1, 3], forecast.Bars.Select(b => int.Parse(b.Title[4..])));
        Assert.Equal([1.0, 0.0, 1.0], forecast.Bars.Select(b => b.Criticality));
        Assert.Equal(Plans.Monday.AddDays(1), forecast.Bars[1].Start.P50);
    }

    [Fact]
    [Truth(Grade.Property, "a ring is told in the jobs' own names; strangers, doubles and missing places are refused")]
    public void Impossible_plans_are_refused_in_words()
    {
        string Told(PlanInput plan) => Assert.Throws<RefusedException>(() => Simulation.Of(plan, 1, 200)).Message;
        Assert.Contains("wait", Told(Plans.Plan(Plans.Job(1, 2, 2), Plans.Job(2, 2, 3), Plans.Job(3, 2, 1))));
        Assert.Contains("job of this plan", Told(Plans.Plan(Plans.Job(1, 2, 9))));
        Assert.Contains("twice", Told(Plans.Plan(Plans.Job(1, 2), Plans.Job(1, 2))));
        Assert.Contains("no bay", Told(Plans.Plan(Plans.Job(1, 2) with { Needs = Needs.None with { Place = WorkPlace.Bay } }) is var p ? p with { Means = p.Means with { Bays = 0 } } : p));
        Assert.Contains("at least one open job", Told(Plans.Plan()));
        Assert.Contains("rise", Told(Plans.Plan(Plans.Job(1, new ThreePoint(3, 2, 1)))));
        Assert.Contains("needs the day", Told(Plans.Plan(Plans.Job(1, 2)) is var q ? q with { Means = q.Means with { Purse = q.Means.Purse with { OnHand = new(default, 5, "saved") } } } : q));
        Assert.Throws<RefusedException>(() => Simulation.Of(Plans.Plan(Plans.Job(1, 2)), 1, 10));
    }

    [Fact]
    [Truth(Grade.Property, "a job that is never paid is told, not waited for for ever")]
    public void A_plan_that_never_ends_is_told()
    {
        var forecast = Plans.Simulated(Plans.Plan(Plans.Job(1, 2) with { Cost = new(300, 300, 300, "GBP") }).WithMoney(100, 0)).Forecast();
        Assert.Equal(1, forecast.Unfinished);
        Assert.Contains(forecast.Cautions, c => c.Contains("not over by"));
    }
}
