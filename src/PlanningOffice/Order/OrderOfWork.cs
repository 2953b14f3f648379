using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Order.Search;

namespace WitnessMark.PlanningOffice.Order;

/// <summary>The best order found, its cost in slots, and a makespan that none can be under.</summary>
/// <param name="Schedules">How many schedules were made on the way.</param>
public sealed record Found(Schedule Schedule, int Makespan, double Cost, int Bound, long Schedules);

/// <summary>
/// Which work when, with what hands and places there are. A population search over lists of activities with serial
/// schedule generation and double justification. The same project, wish and seed give the same order after as many steps.
/// </summary>
public static class OrderOfWork
{
    /// <summary>The best order until told to stop, or until the makespan cannot be better.</summary>
    /// <param name="stop">Asked before each child; at least one schedule is always made.</param>
    /// <param name="progress">Told of each better order.</param>
    /// <param name="known">A schedule to begin from.</param>
    /// <param name="news">Asked before each child for a schedule found elsewhere, which joins the population; mostly null.</param>
    public static Found Find(Project project, OrderWish wish, Chance chance, Func<bool> stop, Action<Found>? progress = null, Schedule? known = null, CancellationToken cancel = default, Func<Schedule?>? news = null)
    {
        if (wish.Wrong(project) is { } wrong) throw new RefusedException(wrong);
        var bound = Bounds.Of(project);
        var population = new Population(project, wish, chance, known);
        progress?.Invoke(Told(population, bound));
        while (!(wish.IsMakespan && population.Best.Makespan <= bound) && !stop())
        {
            cancel.ThrowIfCancellationRequested();
            if (news?.Invoke() is { } heard) population.Join(heard);
            if (population.Step()) progress?.Invoke(Told(population, bound));
        }
        return Told(population, bound);
    }

    /// <summary>An order after a slip that leaves most of the standing plan where it is.</summary>
    /// <param name="standing">The plan before the slip; it need not be workable any more.</param>
    /// <param name="movePenalty">Slots of makespan that one moved activity costs.</param>
    public static Found Reorder(Project project, Schedule standing, double movePenalty, Chance chance, Func<bool> stop, CancellationToken cancel = default) =>
        Find(project, new OrderWish { Standing = standing.Starts, MovePenalty = movePenalty }, chance, stop, cancel: cancel);

    static Found Told(Population from, int bound) =>
        new(new Schedule([.. from.Best.Starts]), from.Best.Makespan, from.Best.Cost, bound, from.Schedules);
}
