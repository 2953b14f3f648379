using WitnessMark.FrontOffice.PlanJobs;
using WitnessMark.FrontOffice.PlanNext;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Plans;
using WitnessMark.Stores;
using Plan = WitnessMark.FrontOffice.PlanNext.PlanNext;
using TakeIn = WitnessMark.FrontOffice.TakeInVehicle.TakeInVehicle;

namespace WitnessMark.Tests.FrontOffice.PlanJobs;

[Truth(Grade.Property, "the demonstration van's plan: taken in twice nothing is doubled; every order serves; what is offered is ready")]
public sealed class PlanTests
{
    static readonly DateOnly Today = new(2026, 11, 25);

    static VehicleTree Van()
    {
        var file = TakeIn.Run(new(Demo.Text("vehicle.csv"), Demo.Text("parts.csv"), Demo.Text("samples.csv"), Demo.Sheet, DateTimeOffset.UnixEpoch)).File;
        return new(new(file.Vehicle, 1), [.. file.Systems.Select(s => new Versioned<VehicleSystem>(s, 1))], [.. file.Parts.Select(p => new Versioned<Part>(p, 1))], [.. file.Samples.Select(s => new Versioned<PartSample>(s, 1))]);
    }

    static async Task<PlanNextRequest> Planned(VehicleTree van, IJobStore store)
    {
        await TakeInPlan.Run(Demo.Text("plan.csv"), van, store, TestContext.Current.CancellationToken);
        var (jobs, milestones) = (await store.Jobs(van.Vehicle.Row.Id), await store.Milestones(van.Vehicle.Row.Id));
        return new(van, [.. jobs.Select(j => j.Row)], [.. milestones.Select(m => m.Row)]);
    }

    [Fact]
    public async Task The_van_is_planned_once()
    {
        var (van, store) = (Van(), new MemoryJobs());
        var first = await TakeInPlan.Run(Demo.Text("plan.csv"), van, store, TestContext.Current.CancellationToken);
        Assert.InRange(first.JobsKept, 100, 250);
        Assert.Equal((4, true), (first.MilestonesKept, first.MeansKept));
        Assert.Empty(first.Jobs.Faults);
        Assert.Equal(3, first.Jobs.Proposal.Undecided.Length);
        Assert.Contains(first.Jobs.Cautions, c => c.Contains("asbestos"));
        var again = await TakeInPlan.Run(Demo.Text("plan.csv"), van, store, TestContext.Current.CancellationToken);
        Assert.Equal((0, 0, false), (again.JobsKept, again.MilestonesKept, again.MeansKept));
    }

    [Fact]
    public async Task Every_milestone_names_jobs_of_the_plan()
    {
        var plan = await Planned(Van(), new MemoryJobs());
        var ids = plan.Jobs.Select(j => j.Id).ToHashSet();
        Assert.All(plan.Milestones, m => Assert.All(m.Jobs, j => Assert.Contains(j, ids)));
    }

    [Fact]
    public async Task The_order_serves_and_next_is_ready()
    {
        var plan = await Planned(Van(), new MemoryJobs());
        var order = Plan.Order(plan, Today).ToDictionary(p => p.Job);
        Assert.Equal(plan.Jobs.Length, order.Count);
        foreach (var job in plan.Jobs)
            foreach (var a in job.After) Assert.True(order[a].Over <= order[job.Id].Start);

        var next = Plan.Run(plan, new(Today, 3) { Helper = false, Dry = false });
        var ready = PlanCheck.Ready(plan.Jobs).Select(j => j.Id).ToHashSet();
        Assert.NotEmpty(next.Jobs);
        Assert.All(next.Jobs, n => Assert.True(ready.Contains(n.Job.Id) && !n.Job.Needs.Helper && !n.Job.Needs.DryDay && n.Why.EndsWith('.')));
    }

    [Fact]
    public async Task What_is_ordered_by_its_latest_day_is_needed_later()
    {
        var orders = Plan.OrderToday(await Planned(Van(), new MemoryJobs()), Today, ahead: 60);
        Assert.NotEmpty(orders);
        Assert.All(orders, o => Assert.True(o.LatestDay < o.NeededBy && o.LatestDay <= Today.AddDays(60)));
        Assert.Equal(orders.Select(o => o.LatestDay).Order(), orders.Select(o => o.LatestDay));
    }

    [Theory]
    [InlineData("milestone,weight,reached when\nrun,1,Engin", "line 2, reached when")]
    [InlineData("milestone,weight,reached when\nrun,1,Fan blade", "decide its route")]
    [InlineData("milestone,weight,reached when\nrun,-1,Engine", "line 2, weight")]
    [InlineData("milestone,weight,wanted,reached when\nrun,1,soon,Engine", "line 2, wanted")]
    [InlineData("milestone,weight,reached when\nrun,1,Engine\nrun,1,Body", "line 3, milestone")]
    [InlineData("place,how many\nbay,many", "line 2, how many")]
    [InlineData("place,how many\nattic,1", "line 2, place")]
    [InlineData("money,currency,likely\non hand,GBP,100", "line 2, day")]
    [InlineData("money,currency,likely,day\non hand,pounds,100,2026-11-01", "ISO 4217")]
    [InlineData("money,low,likely,high\neach month,90,60,100", "line 2, low, likely, high")]
    [InlineData("money,likely\nnever,1", "line 2, money")]
    [InlineData("bay,1", "line 1, heading")]
    public async Task Wrong_rows_are_named_and_nothing_is_kept(string text, string said)
    {
        var (van, store) = (Van(), new MemoryJobs());
        var wrong = await Assert.ThrowsAsync<RefusedException>(() => TakeInPlan.Run(text, van, store, TestContext.Current.CancellationToken));
        Assert.Contains(said, wrong.Message);
        Assert.Empty(await store.Jobs(van.Vehicle.Row.Id, TestContext.Current.CancellationToken));
    }
}
