using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Next;
using WitnessMark.PlanningOffice.Tests.Plans;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Next;

[Truth(Grade.Property, "only what is ready, fits and is allowed is offered, ranked by the stated rule")]
public sealed class NextJobsTests
{
    static readonly FreeTime ThreeHours = new(new(2026, 11, 28), 3);

    static NextFacts Facts(params Job[] jobs) => new([.. jobs], [], ImmutableDictionary<Guid, DateOnly>.Empty, _ => []);

    [Fact]
    public void What_the_day_does_not_allow_is_not_offered_and_is_told()
    {
        Job Needing(int n, Needs needs) => Plan.Job(n, 1) with { Needs = needs };
        var none = Needs.None;
        var facts = Facts(
            Plan.Job(1, 1), Needing(2, none with { Helper = true }), Needing(3, none with { DryDay = true }), Needing(4, none with { Daylight = true }),
            Needing(5, none with { Noisy = true }), Needing(6, none with { Place = WorkPlace.Bay }), Plan.Job(7, 9), Plan.Job(8, 1, 7),
            Plan.Job(9, 1) with { Leads = [Plan.Supply(3, 5, 9)] });
        var list = NextJobs.Of(facts, ThreeHours with { Helper = false, Dry = false, Daylight = false, NoiseAllowed = false, BayFree = false });
        Assert.Equal("job 1", Assert.Single(list.Jobs).Job.Title);
        Assert.Equal("\"job 7\" takes longer and has no good stopping place; 1 job waits behind it.", list.Blocks[0]);
        Assert.Equal(5, list.Blocks.Length);
        Assert.Equal(["job 1", "job 2", "job 3", "job 4", "job 5", "job 6"], NextJobs.Of(facts, ThreeHours).Jobs.Select(j => j.Job.Title).Order());
    }

    [Fact]
    public void A_long_job_with_steps_stops_after_the_last_that_fits()
    {
        var card = BlankRoute.Card(RouteCardTests.Bracket, Shop.Usual);
        var job = Job.Of(Plan.Id(1), Guid.Empty, null, Guid.Empty, card);
        var time = ThreeHours with { Hours = card.Steps[0].Hours.Likely + card.Steps[1].Hours.Likely + 0.01 };
        var next = Assert.Single(NextJobs.Of(Facts(job), time).Jobs);
        Assert.Equal(card.Steps[1].Number, next.StopAfter?.Number);
        Assert.Contains($"stop after step {card.Steps[1].Number}", next.Why);
        Assert.Empty(NextJobs.Of(Facts(job), time with { SmallOnly = true }).Jobs);
    }

    [Fact]
    public void The_rank_is_in_hand_then_loan_then_long_waits_then_milestone_then_the_longest_path()
    {
        var part = new Guid(5, 5, 5, [1, 2, 3, 4, 5, 6, 7, 8]);
        var facts = Facts(
            Plan.Job(1, 2), Plan.Job(2, 1), Plan.Job(3, 1) with { Leads = [new("plating", LeadSide.Behind, new(6, 8, 10), Cost.None("GBP"), 0, null, false)] },
            Plan.Job(8, 1), Plan.Job(9, 1, 8) with { Leads = [new("blasting", LeadSide.Behind, new(8, 9, 10), Cost.None("GBP"), 0, null, false)] },
            Plan.Job(4, 1) with { PartId = part, Kind = WorkKind.Survey }, Plan.Job(5, 1) with { State = JobState.InHand }, Plan.Job(6, 20, 1)) with
        {
            Milestones = [new Milestone(Plan.Id(90), Guid.Empty, "hear it run", [Plan.Id(2)], 1, null)],
            GoesBack = new Dictionary<Guid, DateOnly> { [part] = new(2026, 12, 5) },
        };
        var list = NextJobs.Of(facts, ThreeHours);
        Assert.Equal(["job 5", "job 4", "job 3", "job 8", "job 2", "job 1"], list.Jobs.Select(j => j.Job.Title));
        Assert.Equal("What was borrowed for it goes back on 2026-12-05.", list.Jobs[1].Why);
        Assert.Equal("It lies on the longest path to the finish.", list.Jobs[5].Why);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-3)]
    [InlineData(25)]
    [InlineData(double.NaN)]
    public void Impossible_hours_are_refused(double hours) =>
        Assert.Throws<RefusedException>(() => NextJobs.Of(Facts(), ThreeHours with { Hours = hours }));
}
