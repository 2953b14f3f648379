using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice;

/// <summary>The order of work as it was decided last; a new search moves as few jobs of it as it can.</summary>
/// <param name="Id">The vehicle's.</param>
/// <param name="InTurn">Jobs in the order they are begun; those done since, or unknown, are passed over.</param>
public sealed record StandingOrder(Guid Id, ImmutableArray<Guid> InTurn, DateOnly On)
{
    public Refusal? Wrong => InTurn.IsDefault ? Refusal.Of("order of work", null, "send a list; it may be empty") : null;
}
