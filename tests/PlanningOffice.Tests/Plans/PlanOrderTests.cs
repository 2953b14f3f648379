using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Plans;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Plans;

public sealed class PlanOrderTests
{
    static readonly DateOnly Monday = new(2026, 11, 30);

    /// <summary>Two hours on Saturdays and Sundays.</summary>
    static double Weekend(DateOnly day) => day.DayOfWeek is DayOfWeek.Saturday or DayOfWeek.Sunday ? 2 : 0;

    [Fact]
    [Truth(Grade.Property, "by hand: five hours at two on each weekend day from Monday 30 November 2026 are over on the Saturday after next")]
    public void Hours_are_spent_on_the_days_that_have_some()
    {
        var planned = PlanOrder.Of(new([Plan.Job(1, 5), Plan.Job(2, 1, 1)], [], Monday, Weekend));
        Assert.Equal([new(2026, 12, 5), new(2026, 12, 12)], planned.Select(p => p.Start));
        Assert.Equal([new(2026, 12, 12), new(2026, 12, 12)], planned.Select(p => p.End));
    }

    [Fact]
    [Truth(Grade.Property, "every order serves: none begins before those it waits for are over, and a supply is waited for")]
    public void Any_order_serves()
    {
        var chance = new Chance(4);
        var jobs = Enumerable.Range(1, 60).Select(n => Plan.Job(n, 0.5 + 4 * chance.Uniform(), [.. Enumerable.Range(1, n - 1).Where(_ => chance.Uniform() < 0.08)])
            with
        { Leads = chance.Uniform() < 0.3 ? [Plan.Supply(5, 10, 30)] : [] }).ToArray();
        var planned = PlanOrder.Of(new([.. jobs], [new(Plan.Id(99), Guid.Empty, "run", [Plan.Id(30)], 3, null)], Monday, Weekend)).ToDictionary(p => p.Job);
        Assert.Equal(60, planned.Count);
        foreach (var j in jobs)
        {
            foreach (var a in j.After) Assert.True(planned[a].Over <= planned[j.Id].Start, j.Title);
            if (j.Leads.Length > 0) Assert.True(planned[j.Id].Start >= Monday.AddDays(12));
        }
    }

    [Fact]
    [Truth(Grade.Property, "what an early milestone waits for goes before what it does not")]
    public void A_milestone_draws_its_jobs_forward()
    {
        Job[] jobs = [Plan.Job(1, 9), Plan.Job(2, 9, 1), Plan.Job(3, 2), Plan.Job(4, 2, 3)];
        Assert.Equal(Plan.Id(1), PlanOrder.Of(new([.. jobs], [], Monday, Weekend))[0].Job);
        var drawn = PlanOrder.Of(new([.. jobs], [new(Plan.Id(99), Guid.Empty, "hear it run", [Plan.Id(4)], 2, null)], Monday, Weekend));
        Assert.Equal([Plan.Id(3), Plan.Id(4), Plan.Id(1), Plan.Id(2)], drawn.Select(p => p.Job));
    }

    [Fact]
    [Truth(Grade.Property, "after a slip nothing changes place that need not")]
    public void The_last_order_is_kept()
    {
        Job[] jobs = [Plan.Job(1, 3), Plan.Job(2, 3), Plan.Job(3, 3), Plan.Job(4, 3, 2)];
        Guid[] last = [Plan.Id(3), Plan.Id(1), Plan.Id(2), Plan.Id(4)];
        var slipped = jobs.Select(j => j.Id == Plan.Id(2) ? j with { Hours = new(30, 30, 30) } : j).ToArray();
        Assert.Equal(last, PlanOrder.Of(new([.. slipped], [], Monday, Weekend) { Previous = [.. last] }).Select(p => p.Job));
    }

    [Fact]
    [Truth(Grade.Property, "a calendar without hours ends in a sentence, not in a hang")]
    public void A_calendar_without_hours_is_refused() =>
        Assert.Contains("twenty years", Assert.Throws<RefusedException>(() => PlanOrder.Of(new([Plan.Job(1, 1)], [], Monday, _ => 0))).Message);
}
