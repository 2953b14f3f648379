namespace WitnessMark.PlanningOffice.Order;

/// <summary>The best schedule of a search, and a makespan that no schedule can be under.</summary>
public sealed record Finish(Schedule Best, int Bound);

/// <summary>A solver that can prove the least makespan.</summary>
public interface IExactFinish
{
    /// <param name="hint">A schedule that can be worked; the answer is never longer.</param>
    /// <param name="bound">A makespan that none can be under.</param>
    /// <param name="limit">It returns soon after.</param>
    /// <param name="workers">Threads that it may use.</param>
    /// <returns>Null when the solver cannot run on this machine.</returns>
    Finish? Run(Project project, Schedule hint, int bound, TimeSpan limit, int workers, Action<Finish> better, CancellationToken stop);
}
