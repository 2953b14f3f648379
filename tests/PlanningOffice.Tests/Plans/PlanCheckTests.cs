using WitnessMark.PlanningOffice.Plans;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Plans;

[Truth(Grade.Property, "a plan has an order if and only if no jobs wait for each other in a ring")]
public sealed class PlanCheckTests
{
    [Fact]
    public void The_shortest_ring_is_told_in_words()
    {
        // 1 → 2 → 3 → 4 → 1 and, shorter, 3 → 5 → 3; 6 stands behind them and 7 beside.
        Job[] jobs = [Plan.Job(1, 1, 2), Plan.Job(2, 1, 3), Plan.Job(3, 1, 4, 5), Plan.Job(4, 1, 1), Plan.Job(5, 1, 3), Plan.Job(6, 1, 1), Plan.Job(7, 1)];
        var fault = Assert.Single(PlanCheck.Faults(jobs));
        Assert.True(fault.Stops);
        Assert.Equal("No order serves: \"job 3\" waits for \"job 5\", which waits for \"job 3\". Take one of these waitings away.", fault.Words);
    }

    [Fact]
    public void Each_of_a_longer_ring_waits_for_the_next()
    {
        Job[] jobs = [Plan.Job(1, 1, 2), Plan.Job(2, 1, 3), Plan.Job(3, 1, 1)];
        var ring = PlanCheck.Ring(jobs);
        Assert.Equal(3, ring.Length);
        for (var i = 0; i < 3; i++) Assert.Contains(ring[(i + 1) % 3].Id, ring[i].After);
    }

    [Fact]
    public void Unknown_jobs_and_jobs_out_of_turn_are_told()
    {
        Job[] jobs = [Plan.Job(1, 1, 9), Plan.Job(2, 1), Plan.Job(3, 1, 2) with { State = JobState.Done }];
        var faults = PlanCheck.Faults(jobs);
        Assert.Equal([true, false], faults.Select(f => f.Stops));
        Assert.Contains("\"job 1\" waits for a job that is not on the list", faults[0].Words);
        Assert.Contains("\"job 3\" is done although \"job 2\"", faults[1].Words);
    }

    [Fact]
    public void A_job_is_ready_when_all_before_it_are_done()
    {
        Job[] jobs = [Plan.Job(1, 1) with { State = JobState.Done }, Plan.Job(2, 1, 1), Plan.Job(3, 1, 2), Plan.Job(4, 1)];
        Assert.Equal(["job 2", "job 4"], PlanCheck.Ready(jobs).Select(j => j.Title));
        Assert.Empty(PlanCheck.Faults(jobs));
    }
}
