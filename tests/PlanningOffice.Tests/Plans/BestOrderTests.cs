using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Plans;
using WitnessMark.Stores;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Plans;

public sealed class BestOrderTests
{
    static readonly Guid Van = Guid.NewGuid();
    static readonly Means Shed = Means.Usual(Van);

    static Job Piece(string title, double hours, params Job[] after) =>
        Job.Plain(NamedId.Of(Van, title), Van, null, null, title, WorkKind.Other, new(hours, hours, hours), Cost.None("GBP"))
            with
        { After = [.. after.Select(a => a.Id)] };

    static Job Curing(Job job, double days) => job with { Leads = [new("cure", LeadSide.Behind, new(days, days, days), Cost.None("GBP"), 0, null, false)] };

    static BestOrder Found(IEnumerable<Job> jobs, Func<OrderFacts, OrderFacts>? asked = null, Means? means = null)
    {
        var facts = new OrderFacts([.. jobs], [], new(2031, 5, 5), _ => 2);
        var steps = 0;
        return BestOrder.Find(asked?.Invoke(facts) ?? facts, means ?? Shed, new Chance(1), () => ++steps > 500);
    }

    [Fact]
    [Truth(Grade.Property, "with one pair of hands, what cures longest is begun first: the wait then passes beside other work")]
    public void What_cures_goes_first()
    {
        var (paint, weld, sweep) = (Curing(Piece("1", 2), 10), Piece("2", 10), Piece("3", 8));
        var order = Found([sweep, weld, paint]);
        Assert.Equal(paint.Id, order.InTurn[0]);
        // 20 h of own work; the cure of 10 days at 2 h is over 2 + 20 h after the beginning.
        Assert.Equal((22, 22), (order.Hours, order.LeastHours));
    }

    [Fact]
    [Truth(Grade.Property, "a milestone that weighs is reached before work that nobody waits for")]
    public void A_milestone_comes_early()
    {
        var (long1, long2) = (Piece("1", 20), Piece("2", 20));
        var (start, run) = (Piece("3", 1), Piece("4", 1));
        run = run with { After = [start.Id] };
        var order = Found([long1, long2, run, start], f => f with { Milestones = [new(Guid.NewGuid(), Van, "hear it run", [run.Id], 3, null)] });
        Assert.Equal([start.Id, run.Id], order.InTurn.Take(2));
    }

    [Fact]
    [Truth(Grade.Property, "a standing order is left as it is when nothing is gained by moving")]
    public void A_slip_moves_few()
    {
        var jobs = Enumerable.Range(1, 12).Select(i => Piece($"{i}", 1 + i % 4)).ToList();
        var first = Found(jobs).InTurn;
        var slipped = jobs.Select(j => j.Id == first[4] ? j with { Hours = j.Hours * 2 } : j);
        var again = Found(slipped, f => f with { Previous = first });
        Assert.Empty(again.Moved);
        Assert.Equal(first.AsEnumerable(), again.InTurn);
    }

    [Fact]
    [Truth(Grade.Property, "a curing part keeps its bench: two that cure on the only bench cannot overlap")]
    public void A_cure_keeps_its_bench()
    {
        Job OnBench(string title) => Curing(Piece(title, 1), 5) with { Needs = Needs.None with { Place = WorkPlace.Bench } };
        var two = new[] { OnBench("1"), OnBench("2") };
        Assert.Equal(22, Found(two).Hours);
        Assert.Equal(12, Found(two, means: Shed with { Benches = 2 }).Hours);
        Assert.Contains("bench", Assert.Throws<RefusedException>(() => Found(two, means: Shed with { Benches = 0 })).Message);
    }

    [Fact]
    [Truth(Grade.Property, "a ring is told by the titles")]
    public void A_ring_is_refused()
    {
        var a = Piece("1", 1);
        var b = Piece("2", 1, a);
        Assert.Contains("\"1\" waits for \"2\"", Assert.Throws<RefusedException>(() => Found([a with { After = [b.Id] }, b])).Message);
    }
}
