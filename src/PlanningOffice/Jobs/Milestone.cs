using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.PlanningOffice;

/// <summary>A point worth reaching early: hear it run, see it roll.</summary>
/// <param name="Jobs">It is reached when all of them are done.</param>
/// <param name="Weight">How much an early day of it counts beside an early day of the whole, 0 or more; 1 as much.</param>
/// <param name="Wanted">By when, if there is such a day.</param>
public sealed record Milestone(Guid Id, Guid VehicleId, string Name, ImmutableArray<Guid> Jobs, double Weight, DateOnly? Wanted)
{
    public Refusal? Wrong =>
        (string.IsNullOrWhiteSpace(Name) || Name.Length > Check.LongestText ? Refusal.Of("milestone name", Name, "give it a few words") : null)
        ?? (Jobs.IsDefaultOrEmpty ? Refusal.Of($"jobs of \"{Name}\"", null, "name at least one") : null)
        ?? (Weight is >= 0 and <= 1000 ? null : Refusal.Of($"weight of \"{Name}\"", $"{Weight}", "give a number from 0 to 1000"));
}
