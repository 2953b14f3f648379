using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Intentions;

/// <summary>What the person decides about the patterns that a sample's plan seems to have been drawn to.</summary>
/// <param name="Id">The sample's id: a sample has one such row.</param>
/// <param name="Refused">Keys of the findings that are not to be taken.</param>
/// <param name="Forced">Keys of those that are to hold whatever the readings say; none stands in both lists.</param>
public sealed record IntentChoices(Guid Id, Guid VehicleId, ImmutableArray<string> Refused, ImmutableArray<string> Forced) : IDecision
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Rows.Each("findings refused", Refused, k => Check.Named("finding refused", k)) ?? Rows.Each("findings forced", Forced, k => Check.Named("finding forced", k))
        ?? (Refused.Intersect(Forced).FirstOrDefault() is { } both ? Refusal.Of("finding", both, "refuse it or force it, not both") : null);
}
