using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>What drives the P90, in words.</summary>
static class DriverWords
{
    const int Told = 3;
    const double LeastTold = 0.01;

    public static ImmutableArray<string> Of(ImmutableArray<Driver> drivers, ImmutableArray<JobBar> bars, double dry)
    {
        var critical = bars.MaxBy(b => b.Criticality)!;
        return
        [
            .. drivers.Where(d => d.Share >= LeastTold).Take(Told).Select(d => $"{char.ToUpperInvariant(d.Words[0])}{d.Words[1..]}: {d.Share:0%} of the spread of the finish."),
            bars.Length > 1 && bars.Count(b => b.Criticality > 0.5) > bars.Length / 2
                ? "Your own hours hold it up: most jobs drive the finish, one behind the other."
                : $"\"{critical.Title}\" drives the finish in {critical.Criticality:0%} of the futures.",
            .. dry >= 0.005 ? [$"A due payment has to wait for money in {dry:0%} of the futures."] : Array.Empty<string>(),
        ];
    }
}
