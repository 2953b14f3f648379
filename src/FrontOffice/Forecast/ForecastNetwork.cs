using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.FrontOffice.Forecast;

/// <summary>A plain activity network as a JSON file (docs/guide/forecast.md).</summary>
public sealed record ForecastNetworkRequest(ReadOnlyMemory<byte> File, int Futures, ulong Seed)
{
    public Hands? Hands { get; init; }
}

/// <summary>When a network is done, and which activities drive it.</summary>
public static class ForecastNetwork
{
    /// <exception cref="RefusedException">The file cannot be read, or the futures are too few or too many.</exception>
    public static Completion Run(ForecastNetworkRequest request, CancellationToken stop = default) =>
        Completion.Simulate(NetworkFile.Read(request.File).Value, request.Futures, request.Seed, request.Hands, stop);
}
