using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;

namespace WitnessMark.FrontOffice.Forecast;

/// <summary>The jobs to be counted.</summary>
/// <param name="Seed">The same seed gives the same futures.</param>
public sealed record ForecastRequest(ImmutableArray<Job> Jobs, ulong Seed)
{
    public int Futures { get; init; } = JobForecast.UsualFutures;
}

/// <summary>Hours and money over all open jobs: half and nine in ten of the futures are done by P50 and P90.</summary>
public static class Forecast
{
    /// <exception cref="RefusedException">A job carries impossible figures.</exception>
    public static JobForecast Run(ForecastRequest request, CancellationToken stop = default) =>
        JobForecast.Of(request.Jobs, new Chance(request.Seed), request.Futures, cancel: stop);
}
