using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Next;

/// <summary>The time and circumstances at hand: "three hours, no helper, raining".</summary>
/// <param name="Hours">More than 0, at most 24.</param>
public sealed record FreeTime(DateOnly Today, double Hours)
{
    public bool Helper { get; init; } = true;

    public bool Dry { get; init; } = true;

    /// <summary>False in the evening: nothing that the eye must judge by day.</summary>
    public bool Daylight { get; init; } = true;

    /// <summary>False in the quiet hours.</summary>
    public bool NoiseAllowed { get; init; } = true;

    public bool BenchFree { get; init; } = true;

    public bool BayFree { get; init; } = true;

    /// <summary>A weary evening: only jobs that are over within the time even at their high guess.</summary>
    public bool SmallOnly { get; init; }

    public Refusal? Wrong => Hours is > 0 and <= 24 ? null : Refusal.Of("hours", $"{Hours}", "give more than 0 and at most 24");
}
