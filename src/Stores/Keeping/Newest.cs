using System.Collections.Immutable;

namespace WitnessMark.Stores.Keeping;

/// <summary>A fact about one part, or about the whole vehicle.</summary>
public interface IPartFact : IFact
{
    Guid? PartId { get; }
}

/// <summary>Which stretch of the facts is wanted: the newest arrivals, or those that arrived before a place among them.</summary>
/// <param name="Before">A <see cref="Stretch{T}.Before"/> of the last answer; null begins with the newest.</param>
/// <param name="PartId">Only those of this part; null for all.</param>
/// <param name="Take">At most so many, 1 to <see cref="Most"/>.</param>
public sealed record Newest(long? Before = null, Guid? PartId = null, int Take = 60)
{
    public const int Most = 500;
}

/// <summary>A stretch of the facts that stand, newest arrival first.</summary>
/// <param name="Before">Where the next stretch begins; null when this was the last.</param>
/// <param name="Count">How many there are in all.</param>
public sealed record Stretch<T>(ImmutableArray<T> Rows, long? Before, int Count);
