using WitnessMark.Cli.Planning;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Order;

namespace WitnessMark.Tests.Cli.Planning;

public class PortfolioTests
{
    /// <summary>3 + 3 beside 2 + 2 + 2 on two places: the work alone says that 6 is least.</summary>
    static readonly Project Proved = Project.Of([.. new[] { 3, 3, 2, 2, 2 }.Select(d => new Activity(d, [1], []))], [2]).Value;

    /// <summary>Five jobs of 2 slots, of which no two go together: 10 slots, though the work alone says only 7.</summary>
    static readonly Project Unproved = Project.Of([.. Enumerable.Range(0, 5).Select(_ => new Activity(2, [2], []))], [3]).Value;

    [Fact, Truth(Grade.Property, "a machine without the solver's native part still gets an order, and is told")]
    public void Without_the_native_part_our_own_order_is_given_and_said()
    {
        foreach (IExactFinish broken in new IExactFinish[] { new Broken(), new Absent() })
        {
            var answer = Run(Unproved, broken, 0.5);
            Assert.Null(answer.Schedule.Wrong(Unproved));
            Assert.Contains("cannot run on this machine", answer.Caution);
        }
    }

    [Fact, Truth(Grade.Property, "a solver that does not come back is left behind")]
    public void A_solver_that_never_returns_is_left_behind()
    {
        var since = TimeProvider.System.GetTimestamp();
        var answer = Run(Unproved, new Deaf(), 0.5);
        Assert.Null(answer.Schedule.Wrong(Unproved));
        Assert.InRange(TimeProvider.System.GetElapsedTime(since).TotalSeconds, 0, 1.5);
    }

    [Fact, Truth(Grade.Property, "a proof by the solver ends our own search, and one of ours ends the wait")]
    public void Whoever_proves_the_best_ends_both()
    {
        var since = TimeProvider.System.GetTimestamp();
        var proved = Run(Unproved, new Oracle(), 60);
        Assert.Equal(proved.Bound, proved.Schedule.Makespan(Unproved));
        Assert.Equal(6, Run(Proved, new Deaf(), 60).Schedule.Makespan(Proved));
        Assert.InRange(TimeProvider.System.GetElapsedTime(since).TotalSeconds, 0, 30);
    }

    static OrderAnswer Run(Project project, IExactFinish exact, double seconds)
    {
        var clock = TimeProvider.System;
        return new Portfolio(project, clock, clock.GetTimestamp() + (long)(seconds * clock.TimestampFrequency), exact).Run(new Chance(1));
    }

    sealed class Broken : IExactFinish
    {
        public Finish? Run(Project project, Schedule hint, int bound, TimeSpan limit, int workers, Action<Finish> better, CancellationToken stop) =>
            throw new DllNotFoundException("none here");
    }

    sealed class Absent : IExactFinish
    {
        public Finish? Run(Project project, Schedule hint, int bound, TimeSpan limit, int workers, Action<Finish> better, CancellationToken stop) => null;
    }

    sealed class Deaf : IExactFinish
    {
        public Finish? Run(Project project, Schedule hint, int bound, TimeSpan limit, int workers, Action<Finish> better, CancellationToken stop)
        {
            Thread.Sleep(TimeSpan.FromSeconds(10));
            return new Finish(hint, bound);
        }
    }

    sealed class Oracle : IExactFinish
    {
        public Finish? Run(Project project, Schedule hint, int bound, TimeSpan limit, int workers, Action<Finish> better, CancellationToken stop) =>
            new(hint, hint.Makespan(project));
    }
}
