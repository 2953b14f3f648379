using WitnessMark.Bench;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Futures;

public sealed class SimulationTests
{
    [Fact]
    [Truth(Grade.Published, "PERT mean (l + 4m + h)/6, beta variance; means and variances of independent hours add")]
    public void Hours_have_the_mean_and_spread_of_their_sum()
    {
        var jobs = Enumerable.Range(0, 9).Select(i => Plans.Job(i + 1, new ThreePoint(1, 1 + i * 0.5, 5))).ToArray();
        var hours = Plans.Simulated(Plans.Plan(jobs), 20_000).Forecast().Hours;
        Assert.InRange((hours.Mean.Value - jobs.Sum(j => j.Hours.Spread.Mean)) / hours.Mean.Std, -4, 4);
        Assert.InRange(hours.Sd / Math.Sqrt(jobs.Sum(j => j.Hours.Spread.Sd * j.Hours.Spread.Sd)), 0.975, 1.025);
    }

    [Fact]
    [Truth(Grade.Published, "largest of n independent: F(t)ⁿ; Beta(3, 3) has F(x) = 10x³ − 15x⁴ + 6x⁵ (polynomial of the incomplete beta)")]
    public void The_last_of_many_waits_is_distributed_as_the_largest()
    {
        const int n = 6;
        var jobs = Enumerable.Range(1, n).Select(i => Plans.Job(i, 0) with { Leads = [Plans.Before(new(0, 500, 1000))] }).ToArray();
        var days = Plans.Simulated(Plans.Plan(jobs), 20_000).Forecast().Finish.Days;
        // What comes is worked on at the next hours, up to two days later: 0.4 % of the range at most.
        double F(double x) => Math.Pow(10 * Math.Pow(x, 3) - 15 * Math.Pow(x, 4) + 6 * Math.Pow(x, 5), n);
        Assert.InRange(F((days.P10.Value - 1) / 1000), 0.1 - 0.015, 0.1 + 0.015);
        Assert.InRange(F((days.P50.Value - 1) / 1000), 0.5 - 0.025, 0.5 + 0.025);
        Assert.InRange(F((days.P90.Value - 1) / 1000), 0.9 - 0.015, 0.9 + 0.015);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "a plain simulation of the same model, bench/PlainFutures.cs: other samplers, list searched from the top")]
    public void It_agrees_with_a_plain_simulation_of_the_same_model()
    {
        const int futures = 1200;
        var plan = LargePlan.Of(120, false);
        var ours = Simulation.Of(plan, 3, futures).Run().Forecast().Finish.Days;
        var (plain, chance) = (new PlainFutures(plan), new Chance(17));
        var theirs = Spread.Of([.. Enumerable.Range(0, futures).Select(_ => plain.Finish(chance))]);
        foreach (var (a, b) in new[] { (ours.Mean, theirs.Mean), (ours.P10, theirs.P10), (ours.P50, theirs.P50), (ours.P90, theirs.P90) })
            Assert.InRange((a.Value - b.Value) / Math.Sqrt(a.Std * a.Std + b.Std * b.Std), -4, 4);
        Assert.InRange(ours.Sd / theirs.Sd, 0.9, 1.1);
    }

    [Fact]
    [Truth(Grade.Property, "the outcome does not depend on how many workers there are, nor on the order of their parts")]
    public void Workers_change_nothing()
    {
        var plan = LargePlan.Of(60, true);
        var one = Simulation.Of(plan, 5, 500).Run();
        var three = Simulation.Of(plan, 5, 500).Run((parts, part) => { for (var i = parts - 1; i >= 0; i--) part(i); }, 3);
        Assert.Equal(one.Courses.Finish.ToArray(), three.Courses.Finish.ToArray());
        Assert.Equal(one.Forecast().Bars.Select(b => b.Criticality), three.Forecast().Bars.Select(b => b.Criticality));
    }

    [Fact]
    [Truth(Grade.Property, "nothing is allocated for a future after the first")]
    public void A_future_allocates_nothing()
    {
        var run = Simulation.Of(LargePlan.Of(200, true), 5, 400);
        var worker = run.Worker();
        run.Run(worker, 0, 50);
        var before = GC.GetAllocatedBytesForCurrentThread();
        run.Run(worker, 50, 350);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }

    [Fact]
    [Truth(Grade.Property, "a run can be stopped, and says how far it is")]
    public void It_can_be_stopped() =>
        Assert.Throws<OperationCanceledException>(() => Simulation.Of(LargePlan.Of(20, false), 1, 400).Run(cancel: new CancellationToken(canceled: true)));
}
