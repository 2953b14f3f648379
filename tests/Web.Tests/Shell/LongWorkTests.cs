using WitnessMark.Maths;
using WitnessMark.Tests;
using WitnessMark.Web.Client.Shell.Works;

namespace WitnessMark.Web.Tests.Shell;

public sealed class LongWorkTests
{
    readonly LongWork _works = new(TimeProvider.System);

    [Fact]
    [Truth(Grade.Property, "one reckoning at a time; stopping one ends no other; a result waits under its key")]
    public async Task Queued_works_run_one_after_another_and_stop_alone()
    {
        var (first, second) = (new TaskCompletionSource<int>(), new TaskCompletionSource<int>());
        var a = _works.Queue("a", "first", "a", (_, stop) => first.Task.WaitAsync(stop));
        var b = _works.Queue("b", "second", "b", (_, stop) => second.Task.WaitAsync(stop), of: "the question");
        Assert.Equal((WorkState.Running, WorkState.Waiting), (a.State, b.State));
        a.Stop();
        await a.Over;
        second.SetResult(7);
        await b.Over;
        Assert.Equal((WorkState.Stopped, WorkState.Done, 7), (a.State, b.State, b.Result));
        Assert.Same(b, _works.Find<int>("b", "the question"));
        Assert.Null(_works.Find<int>("b", "another question"));
    }

    [Fact]
    [Truth(Grade.Property, "a work that waits its turn can be stopped and never begins")]
    public async Task A_waiting_work_is_stopped_before_it_begins()
    {
        var first = new TaskCompletionSource<int>();
        var begun = false;
        var a = _works.Queue("a", "first", "a", (_, _) => first.Task);
        var b = _works.Queue("b", "second", "b", (_, _) => Task.FromResult(begun = true));
        b.Stop();
        first.SetResult(1);
        await Task.WhenAll(a.Over, b.Over);
        Assert.Equal((WorkState.Done, WorkState.Stopped, false), (a.State, b.State, begun));
    }

    [Fact]
    [Truth(Grade.Property, "a refusal and a fault end the work in words; nothing is thrown at a page that has gone")]
    public async Task A_refusal_and_a_fault_are_told_in_words()
    {
        var refused = _works.Start<int>("a", "Reading", "a", (_, _) => throw new RefusedException(Refusal.Of("list", "x", "choose another")));
        var fault = _works.Start<int>("b", "Sending", "b", async (told, _) =>
        {
            told(0.5);
            await Task.Yield();
            throw new InvalidOperationException("the wire broke");
        });
        await Task.WhenAll(refused.Over, fault.Over);
        Assert.Equal((WorkState.Refused, WorkState.Refused), (refused.State, fault.State));
        Assert.Contains("choose another", refused.Why);
        Assert.Contains("the wire broke", fault.Why);
        Assert.Equal(0.5, fault.Share);
    }

    [Fact]
    [Truth(Grade.Property, "the same key again stops the former and lets go of it")]
    public async Task A_work_of_the_same_key_takes_the_place_of_the_former()
    {
        var former = _works.Start("a", "first", "a", (_, stop) => new TaskCompletionSource<int>().Task.WaitAsync(stop));
        var next = _works.Start("a", "again", "a", (_, _) => Task.FromResult(2));
        await Task.WhenAll(former.Over, next.Over);
        Assert.Equal(WorkState.Stopped, former.State);
        Assert.Equal([next], _works.All);
    }

    [Theory]
    [InlineData(10, 0.25, 30.0)]
    [InlineData(60, 0.5, 60.0)]
    [InlineData(1, 0.5, null)]
    [InlineData(10, 0.01, null)]
    [Truth(Grade.Property, "at an even pace the rest takes as long as its share: spent · (1 − s) / s")]
    public void Time_left_follows_from_the_pace(double spent, double share, double? left) => Assert.Equal(left, Pace.Left(TimeSpan.FromSeconds(spent), share)?.TotalSeconds);

    [Theory]
    [InlineData(4, "a few seconds left")]
    [InlineData(31, "about 40 s left")]
    [InlineData(70, "about a minute left")]
    [InlineData(600, "about 10 min left")]
    public void Time_left_is_said_no_finer_than_it_is_known(double seconds, string words) => Assert.Equal(words, Pace.Words(TimeSpan.FromSeconds(seconds)));
}
