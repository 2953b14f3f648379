using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Order;

namespace WitnessMark.Cli.Planning;

/// <summary>The order found, a makespan that none can be under, and what the person should know.</summary>
sealed record OrderAnswer(Schedule Schedule, int Bound, string? Caution);

/// <summary>
/// Our own search first and alone, then beside the exact finish, which begins from what it found. Whoever proves the
/// best ends both.
/// </summary>
/// <param name="deadline">A timestamp of the clock.</param>
/// <param name="exact">Null leaves it out.</param>
sealed class Portfolio(Project project, TimeProvider clock, long deadline, IExactFinish? exact)
{
    /// <summary>The share of the time that our own search has alone.</summary>
    const double Alone = 0.1;

    /// <summary>Seconds that the exact finish is waited for beyond its time; then it is left behind.</summary>
    const double Grace = 0.3;

    readonly Lock _gate = new();
    Schedule? _best;
    int _makespan = int.MaxValue;
    int _bound;
    bool _ran = true;

    public OrderAnswer Run(Chance chance)
    {
        var alone = clock.GetTimestamp() + (long)(Left * Alone * clock.TimestampFrequency);
        var first = OrderOfWork.Find(project, new OrderWish(), chance, () => clock.GetTimestamp() >= (exact is null ? deadline : alone));
        Better(first.Schedule, first.Bound);
        if (exact is null || Done || Left <= 0) return Answer(null);
        using var stop = new CancellationTokenSource();
        var finish = Task.Run(() => Finish(first, stop.Token), CancellationToken.None);
        OrderOfWork.Find(project, new OrderWish(), chance, () => Left <= 0 || Done, found => Better(found.Schedule, found.Bound), first.Schedule);
        stop.Cancel();
        var ended = Task.WaitAny([finish], TimeSpan.FromSeconds(Grace)) == 0;
        return Answer(ended && (finish.IsFaulted || !_ran) ? "The exact finish cannot run on this machine; the order is that of our own search." : null);
    }

    double Left => (deadline - clock.GetTimestamp()) / (double)clock.TimestampFrequency;

    bool Done
    {
        get { lock (_gate) return _makespan <= _bound; }
    }

    void Finish(Found first, CancellationToken stop)
    {
        var end = exact!.Run(project, first.Schedule, first.Bound, TimeSpan.FromSeconds(Math.Max(0, Left)), 1, f => Better(f.Best, f.Bound), stop);
        if (end is null) _ran = false;
        else Better(end.Best, end.Bound);
    }

    void Better(Schedule schedule, int bound)
    {
        var makespan = schedule.Makespan(project);
        lock (_gate)
        {
            _bound = Math.Max(_bound, bound);
            if (makespan < _makespan) (_best, _makespan) = (schedule, makespan);
        }
    }

    OrderAnswer Answer(string? caution)
    {
        lock (_gate) return new(_best!, _bound, caution);
    }
}
