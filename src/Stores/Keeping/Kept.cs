using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Keeping;

/// <summary>A row of one vehicle's stores. Its id is made where the row is made.</summary>
public interface IKept
{
    Guid Id { get; }

    Guid VehicleId { get; }

    /// <summary>Why it is not fit to be kept, in words; null when it is. What it refers to is not looked up.</summary>
    Refusal? Wrong();
}

/// <summary>A row that may be changed, under a version.</summary>
public interface IDecision : IKept;

/// <summary>Something seen or done: appended, never altered; a <see cref="TakenBack"/> corrects it.</summary>
public interface IFact : IKept
{
    /// <summary>By the clock of the device it was taken on.</summary>
    DateTimeOffset At { get; }

    /// <summary>Which phone or bench it came from; free text.</summary>
    string Device { get; }
}

/// <summary>Takes a fact back. It stays on record; it no longer stands.</summary>
public sealed record TakenBack(Guid Id, Guid VehicleId, Guid FactId, string Reason, DateTimeOffset At, string Device) : IFact
{
    public Refusal? Wrong() =>
        Rows.Wrong(this) ?? Check.Short("reason", Reason)
        ?? (FactId == Guid.Empty ? Refusal.Of("fact taken back", null, "name the entry that no longer stands") : null);
}

/// <summary>Keeps decisions of one kind, under the rule of <see cref="IVehicleStore"/>.</summary>
public interface IDecisions<T> where T : IDecision
{
    Task<ImmutableArray<Versioned<T>>> Of(Guid vehicle, CancellationToken cancel = default);

    Task<Saved<T>> Save(T row, int basedOn, CancellationToken cancel = default);
}

/// <summary>Keeps facts of one kind, under the rule of <see cref="IReadingLog"/>: the same id with other words is refused.</summary>
public interface IFacts<T> where T : IFact
{
    /// <returns>How many were new. All or nothing.</returns>
    Task<int> Append(IReadOnlyList<T> facts, CancellationToken cancel = default);

    /// <summary>All that stand, in the order they arrived: those taken back are left out.</summary>
    Task<ImmutableArray<T>> Of(Guid vehicle, CancellationToken cancel = default);

    /// <summary>A stretch of those that stand, newest arrival first.</summary>
    Task<Stretch<T>> Newest(Guid vehicle, Newest asked, CancellationToken cancel = default);
}
