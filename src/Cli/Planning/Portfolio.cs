using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Order;

namespace WitnessMark.Cli.Planning;

/// <summary>The order found, a makespan that none can be under, and what the person should know.</summary>
sealed record OrderAnswer(Schedule Schedule, int Bound, string? Caution);

/// <summary>
/// Our own search beside the exact finish. The finish begins from the best found, and what it finds joins the
/// population. Whoever proves the best ends both; at the deadline whatever still runs is left behind.
/// </summary>
/// <param name="deadline">A timestamp of the clock.</param>
/// <param name="exact">Null leaves it out.</param>
sealed class Portfolio(Project project, TimeProvider clock, long deadline, IExactFinish? exact) : IDisposable
{
    /// <summary>The share of the time after which the exact finish begins, so that its hint is a good one.</summary>
    const double Alone = 0.1;

    /// <summary>Seconds past the deadline that both have to stop tidily.</summary>
    const double Grace = 0.25;

    /// <summary>Activities; stating more than these to the exact finish takes longer than a short search may.</summary>
    const int MostForExact = 2000;

    readonly CancellationTokenSource _stop = new();
    readonly Lock _gate = new();
    Schedule? _best, _news;
    int _makespan = int.MaxValue;
    int _bound;
    volatile bool _cannot;

    public OrderAnswer Run(Chance chance)
    {
        var finisher = project.Activities.Length <= MostForExact ? exact : null;
        var own = Task.Factory.StartNew(() => Own(chance), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        var finish = Task.Factory.StartNew(() => Finish(finisher), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        _stop.Token.WaitHandle.WaitOne(Left);
        // However late it is, there is one order.
        while (_best is null && Task.WaitAny([own], TimeSpan.FromSeconds(0.01)) < 0) { }
        _stop.Cancel();
        Task.WaitAny([Task.WhenAll(own, finish)], TimeSpan.FromSeconds(Grace));
        if (own.IsFaulted) own.GetAwaiter().GetResult();
        lock (_gate) return new(_best!, _bound, !_cannot && !finish.IsFaulted ? null : "The exact finish cannot run on this machine; the order is that of our own search.");
    }

    public void Dispose() => _stop.Dispose();

    TimeSpan Left => TimeSpan.FromSeconds(Math.Max(0, (deadline - clock.GetTimestamp()) / (double)clock.TimestampFrequency));

    void Own(Chance chance) =>
        OrderOfWork.Find(project, new OrderWish(), chance, () => _stop.IsCancellationRequested, found => Better(found.Schedule, found.Bound), news: () => Interlocked.Exchange(ref _news, null));

    void Finish(IExactFinish? finisher)
    {
        _stop.Token.WaitHandle.WaitOne(Left * Alone);
        while (_best is null && !_stop.IsCancellationRequested) _stop.Token.WaitHandle.WaitOne(TimeSpan.FromSeconds(0.01));
        if (finisher is null || _stop.IsCancellationRequested) return;
        var (hint, bound) = State();
        var end = finisher.Run(project, hint, bound, Left, 1, Tell, _stop.Token);
        if (end is null) _cannot = true;
        else Tell(end);
    }

    void Tell(Finish found)
    {
        if (Better(found.Best, found.Bound)) _news = found.Best;
    }

    bool Better(Schedule schedule, int bound)
    {
        var makespan = schedule.Makespan(project);
        bool better, proved;
        lock (_gate)
        {
            _bound = Math.Max(_bound, bound);
            if (better = makespan < _makespan) (_best, _makespan) = (schedule, makespan);
            proved = _makespan <= _bound;
        }
        if (proved) _stop.Cancel();
        return better;
    }

    (Schedule Best, int Bound) State()
    {
        lock (_gate) return (_best!, _bound);
    }
}
