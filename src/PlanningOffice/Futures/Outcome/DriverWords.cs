using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>What drives the P90, in words.</summary>
static class DriverWords
{
    const int Told = 3;

    public static ImmutableArray<string> Of(ImmutableArray<Driver> drivers, ImmutableArray<JobBar> bars, double dry)
    {
        var critical = bars.MaxBy(b => b.Criticality)!;
        return
        [
            .. drivers.Take(Told).Select(d => $"{char.ToUpperInvariant(d.Words[0])}{d.Words[1..]}: {d.Share:0%} of the spread of the finish."),
            .. critical.Criticality > 0 ? [$"\"{critical.Title}\" drives the finish in {critical.Criticality:0%} of the futures."] : Array.Empty<string>(),
            .. dry >= 0.005 ? [$"A due payment has to wait for money in {dry:0%} of the futures."] : Array.Empty<string>(),
        ];
    }
}
