using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice.Plans;

/// <summary>Something about a set of jobs that cannot be, or that ought to be looked at.</summary>
/// <param name="Stops">No order of work exists while it stands.</param>
public sealed record PlanFault(string Words, ImmutableArray<Guid> Jobs, bool Stops);
