using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Order;

namespace WitnessMark.PlanningOffice.Plans;

/// <summary>An order of work that was searched for.</summary>
/// <param name="InTurn">Open jobs in the order they are begun.</param>
/// <param name="Moved">Jobs that begin in another turn than in the order before; empty when there was none.</param>
/// <param name="Hours">Expected own hours and waits from now to the end, as working time.</param>
/// <param name="LeastHours">No order can be under it.</param>
public sealed record BestOrder(ImmutableArray<Guid> InTurn, ImmutableArray<Guid> Moved, double Hours, double LeastHours)
{
    /// <summary>Slots of the end that leaving one standing start must be worth.</summary>
    const double MovePenalty = 0.5;

    /// <summary>Searches until told to stop. With an order before, a job moves only when that gains more than it disturbs.</summary>
    /// <param name="stop">Asked now and then; at least one order is always made.</param>
    public static BestOrder Find(OrderFacts facts, Means means, Chance chance, Func<bool> stop, Action<BestOrder>? progress = null, CancellationToken cancel = default)
    {
        if (facts.Jobs.All(j => j.State == JobState.Done)) return new([], [], 0, 0);
        var plan = PlanProject.Of(facts, means);
        var before = Standing(plan, facts.Previous);
        var wish = new OrderWish { Weights = plan.Weights };
        if (before is { } standing) wish = wish with { Standing = standing.Starts, MovePenalty = MovePenalty };
        // Without an order before, the search begins from the rule of thumb, which already goes for the heavy milestones first.
        var known = before ?? Standing(plan, [.. PlanOrder.Of(facts).Select(p => p.Job)]);
        var found = OrderOfWork.Find(plan.Project, wish, chance, stop, f => progress?.Invoke(Told(plan, before, f)), known, cancel);
        return Told(plan, before, found);
    }

    static BestOrder Told(PlanProject plan, Schedule? before, Found found)
    {
        var turn = plan.InTurn(found.Schedule);
        return new(turn, before is null ? [] : Shifted(plan.InTurn(before), turn), found.Makespan * PlanProject.Slot, found.Bound * PlanProject.Slot);
    }

    /// <summary>The fewest jobs that must change their turn to get from one order to the other: all but a longest common run.</summary>
    static ImmutableArray<Guid> Shifted(ImmutableArray<Guid> from, ImmutableArray<Guid> to)
    {
        var at = to.Select((id, i) => (id, i)).ToDictionary(x => x.id, x => x.i);
        var keep = LongestRising([.. from.Select(id => at[id])]);
        return [.. to.Where((_, i) => !keep.Contains(i))];
    }

    /// <summary>A longest rising subsequence (patience sorting, O(n log n)).</summary>
    static HashSet<int> LongestRising(int[] values)
    {
        var (tails, links) = (new List<int>(), new int[values.Length]);
        for (var i = 0; i < values.Length; i++)
        {
            var (low, high) = (0, tails.Count);
            while (low < high)
            {
                var mid = (low + high) / 2;
                if (values[tails[mid]] < values[i]) low = mid + 1;
                else high = mid;
            }
            links[i] = low > 0 ? tails[low - 1] : -1;
            if (low == tails.Count) tails.Add(i);
            else tails[low] = i;
        }
        var kept = new HashSet<int>();
        for (var i = tails.Count > 0 ? tails[^1] : -1; i >= 0; i = links[i]) kept.Add(values[i]);
        return kept;
    }

    /// <summary>The order before as a schedule: its jobs as early as their turn lets them begin; jobs it did not know follow. Null when there was none.</summary>
    static Schedule? Standing(PlanProject plan, ImmutableArray<Guid> previous)
    {
        if (previous.IsDefaultOrEmpty) return null;
        var turn = previous.Select((id, i) => (id, i)).DistinctBy(x => x.id).ToDictionary(x => x.id, x => x.i);
        ImmutableArray<int> rank = [.. plan.Project.Activities.Select((_, i) => i < plan.Jobs.Length ? turn.GetValueOrDefault(plan.Jobs[i], int.MaxValue) : -1)];
        return SerialSchedule.By(plan.Project, rank.AsSpan());
    }
}
