using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Plans;

namespace WitnessMark.FrontOffice.OrderWork;

/// <param name="Seconds">How long to search, above 0 and at most 3600.</param>
/// <param name="Seed">The same seed finds the same orders in as many steps.</param>
public sealed record OrderWorkRequest(PlanState.PlanState Plan, double Seconds, ulong Seed);

/// <summary>The order found, with the days it is expected on.</summary>
public sealed record OrderWorkResult(BestOrder Order, ImmutableArray<PlannedJob> Days)
{
    /// <summary>What is kept when the person says yes.</summary>
    public StandingOrder Standing(Guid vehicle, DateOnly today) => new(vehicle, Order.InTurn, today);
}

/// <summary>Puts the open jobs in order: early milestones first, waits beside work, few jobs moved.</summary>
public static class OrderWork
{
    /// <exception cref="RefusedException">The jobs wait in a ring, or a place is lacking.</exception>
    public static OrderWorkResult Run(OrderWorkRequest request, TimeProvider clock, Action<BestOrder>? progress = null, CancellationToken stop = default)
    {
        if (request.Seconds is not (> 0 and <= 3600)) throw new RefusedException(Refusal.Of("seconds", $"{request.Seconds}", "give a time above 0, at most 3600"));
        var from = clock.GetTimestamp();
        var facts = request.Plan.Facts;
        var best = BestOrder.Find(facts, request.Plan.Means, new Chance(request.Seed), () => clock.GetElapsedTime(from).TotalSeconds >= request.Seconds, progress, stop);
        return new(best, PlanOrder.Of(facts with { Previous = best.InTurn }));
    }
}
