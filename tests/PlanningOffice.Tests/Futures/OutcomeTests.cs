using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Futures;

public sealed class OutcomeTests
{
    static Job Waits(int n, ThreePoint days, params int[] after) => Plans.Job(n, 0, after) with { Leads = [Plans.Behind(days)] };

    [Fact]
    [Truth(Grade.Published, "additive model: first-order share Sᵢ = Vᵢ/ΣV (Saltelli et al., Global Sensitivity Analysis: The Primer, 2008)")]
    public void Shares_of_a_sum_are_the_shares_of_its_variance()
    {
        var (a, b) = (new ThreePoint(0, 300, 600), new ThreePoint(0, 150, 300));
        var drivers = Plans.Simulated(Plans.Plan(Waits(1, a), Waits(2, b, 1)), 20_000).Forecast().Drivers;
        var (va, vb) = (a.Spread.Sd * a.Spread.Sd, b.Spread.Sd * b.Spread.Sd);
        Assert.Equal([Plans.Id(1), Plans.Id(2)], drivers.Take(2).Select(d => d.Job!.Value));
        Assert.InRange(drivers[0].Share, va / (va + vb) - 0.02, va / (va + vb) + 0.02);
        Assert.InRange(drivers[1].Share, vb / (va + vb) - 0.02, vb / (va + vb) + 0.02);
    }

    [Fact]
    [Truth(Grade.Published, "law of total variance: σ² = p(1 − p)D² + σ²rest; what is left once p is known is σ²rest")]
    public void Looking_takes_away_the_variance_between_the_findings()
    {
        var rest = new ThreePoint(0, 150, 300);
        var look = Waits(1, rest) with { MayFind = [Plans.Hidden(1, 0.3, "", 0, new(null, default, Plans.Sure(200), Cost.None("GBP")))] };
        var found = Assert.Single(Plans.Simulated(Plans.Plan(look), 20_000).Forecast().Discoveries);
        var all = Math.Sqrt(0.3 * 0.7 * 200 * 200 + rest.Spread.Sd * rest.Spread.Sd);
        Assert.InRange(found.Sd.Now / all, 0.98, 1.02);
        Assert.InRange(found.Sd.Known / rest.Spread.Sd, 0.98, 1.02);
        Assert.InRange(found.DaysIfFound!.Value, 196, 204);
    }

    [Fact]
    [Truth(Grade.Published, "expected value of information: min E − E min (Raiffa and Schlaifer, 1961): plans of 100 + 400 if found and of 200; 0.3 found")]
    public void Regret_is_what_looking_saves()
    {
        Job job(decimal sure, decimal more) => Plans.Job(1, 2) with { Cost = new(sure, sure, sure, "GBP"), MayFind = [Plans.Hidden(1, 0.3, "", 0, new(null, default, default, new(more, more, more, "GBP")))] };
        var (remake, buy) = (Plans.Simulated(Plans.Plan(job(100, 400)), 20_000), Plans.Simulated(Plans.Plan(job(200, 0)), 20_000));
        var regret = Regret.Of(remake, buy, Plans.Id(1001), 0);
        // Blind: 200 against 100 + 0.3 · 400 = 220. Looked: 0.3 · 200 + 0.7 · 100 = 130.
        Assert.Equal(200, regret.Blind, 3);
        Assert.InRange(regret.Looked, 128.5, 131.5);
        Assert.Equal((1, 0), (regret.IfFound, regret.IfNot));
        Assert.Throws<RefusedException>(() => Regret.Of(remake, buy, Plans.Id(7), 0));
    }

    [Fact]
    [Truth(Grade.Property, "common random numbers: a job the same in both plans is drawn alike, so a sure change has a sure difference")]
    public void A_sure_change_has_a_sure_difference()
    {
        var plan = Plans.Plan(Plans.Job(1, new ThreePoint(1, 2, 30)), Plans.Job(2, new ThreePoint(1, 5, 9)));
        var changed = plan with { Jobs = [Plans.Job(3, 4), .. plan.Jobs] };
        var whatIf = WhatIf.Of("four hours more", Plans.Simulated(plan, 1000).Courses, Plans.Simulated(changed, 1000).Courses);
        Assert.Equal(4, whatIf.Hours.Mean, 4);
        Assert.True(whatIf.Hours.Sd < 1e-4);
        Assert.True(whatIf.Days.Low > 0 && whatIf.Days.Sd < Plans.Simulated(plan, 1000).Forecast().Finish.Days.Sd);
        Assert.Throws<RefusedException>(() => WhatIf.Of("x", Plans.Simulated(plan, 1000).Courses, Plans.Simulated(plan, 1000, 2).Courses));
    }

    [Fact]
    [Truth(Grade.Property, "two more hours a week end it sooner; a milestone's odds are the share of futures by its day")]
    public void More_time_ends_it_sooner_and_milestones_have_odds()
    {
        var plan = Plans.Plan(Plans.Job(1, new ThreePoint(10, 20, 60)), Plans.Job(2, new ThreePoint(10, 20, 60), 1)) with
        {
            Milestones = [new(Plans.Id(50), Guid.Empty, "hear it run", [Plans.Id(1)], 1, Plans.Monday.AddDays(10))],
        };
        var run = Plans.Simulated(plan, 2000);
        var more = Plans.Simulated(plan with { Calendar = Plans.Steady with { Week = [new(0, 0), .. Enumerable.Repeat(new DayHours(0, 2.4), 5), new(6, 0)] } }, 2000);
        Assert.True(WhatIf.Of("two more hours a week", run.Courses, more.Courses).Days.High < 0);
        var first = Assert.Single(run.Forecast().Milestones);
        Assert.True(first.Reached.P90 < run.Forecast().Finish.P90);
        Assert.InRange(first.OddsInTime!.Value, 0.2, 0.8);
    }
}
