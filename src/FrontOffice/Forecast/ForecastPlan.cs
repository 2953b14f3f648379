using System.Collections.Immutable;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.FrontOffice.Forecast;

/// <summary>The plan, and what-ifs to set beside it.</summary>
/// <param name="Seed">The same seed gives the same futures.</param>
public sealed record ForecastPlanRequest(PlanInput Plan, ulong Seed)
{
    public const int UsualFutures = 10_000;

    public int Futures { get; init; } = UsualFutures;

    public ImmutableArray<ChangedPlan> Changes { get; init; } = [];

    /// <summary>Null does the futures one after another.</summary>
    public Hands? Hands { get; init; }

    public int Workers { get; init; } = 1;
}

/// <param name="Words">What is done otherwise: send the plating out a month later.</param>
public sealed record ChangedPlan(string Words, PlanInput Plan);

public sealed record ForecastPlanResult(PlanForecast Forecast, ImmutableArray<WhatIf> WhatIfs);

/// <summary>Honest odds on the finish, the milestones and the money.</summary>
public static class ForecastPlan
{
    /// <exception cref="WitnessMark.Maths.RefusedException">The plan or a changed plan is impossible.</exception>
    public static ForecastPlanResult Run(ForecastPlanRequest request, IProgress<double>? progress = null, CancellationToken stop = default)
    {
        var run = Simulated(request, request.Plan, progress, stop);
        return new(run.Forecast(), [.. request.Changes.Select(c => WhatIf.Of(c.Words, run.Courses, Simulated(request, c.Plan, null, stop).Courses))]);
    }

    static Simulation Simulated(ForecastPlanRequest request, PlanInput plan, IProgress<double>? progress, CancellationToken stop) =>
        Simulation.Of(plan, request.Seed, request.Futures).Run(request.Hands, request.Workers, progress, stop);
}
