using System.Collections.Immutable;

namespace WitnessMark.Stores;

/// <summary>
/// Keeps decisions: rows that may be changed, each under a version. A saving names the version it was built on (0: new) and
/// is told of a clash instead of overwriting. Saving again what already stands is no clash. Bad rows are refused
/// (<see cref="Maths.RefusedException"/>) and nothing is kept of them.
/// </summary>
public interface IVehicleStore
{
    Task<ImmutableArray<Versioned<Vehicle>>> Vehicles(CancellationToken cancel = default);

    /// <summary>Null when there is no such vehicle.</summary>
    Task<VehicleTree?> Tree(Guid vehicle, CancellationToken cancel = default);

    Task<Versioned<Part>?> Part(Guid id, CancellationToken cancel = default);

    Task<Versioned<PartSample>?> Sample(Guid id, CancellationToken cancel = default);

    Task<Saved<Vehicle>> Save(Vehicle row, int basedOn, CancellationToken cancel = default);

    Task<Saved<VehicleSystem>> Save(VehicleSystem row, int basedOn, CancellationToken cancel = default);

    Task<Saved<Assembly>> Save(Assembly row, int basedOn, CancellationToken cancel = default);

    Task<Saved<Part>> Save(Part row, int basedOn, CancellationToken cancel = default);

    Task<Saved<PartSample>> Save(PartSample row, int basedOn, CancellationToken cancel = default);

    /// <summary>Takes in a whole typed list in one go, all or nothing. Rows already there are left as they stand.</summary>
    /// <returns>How many rows were new.</returns>
    Task<int> TakeIn(VehicleFile file, CancellationToken cancel = default);

    /// <summary>
    /// Applies a whole set of changes, all or nothing. Nothing is changed when one of its rows stands at another version than
    /// the set was built on, or when a row to be taken off still carries something. <see cref="TreeChanges.Undo"/> applied
    /// afterwards takes it all back, by the same rule.
    /// </summary>
    Task<Applied> Apply(TreeChanges changes, CancellationToken cancel = default);
}

/// <summary>
/// Keeps readings: append-only and durable once the task has ended. The same id sent again is a no-op;
/// the same id with other words is refused.
/// </summary>
public interface IReadingLog
{
    /// <returns>How many were new. All or nothing.</returns>
    Task<int> Append(IReadOnlyList<ReadingEntry> readings, CancellationToken cancel = default);

    /// <returns>How many were new. All or nothing.</returns>
    Task<int> Withdraw(IReadOnlyList<Withdrawal> withdrawals, CancellationToken cancel = default);

    Task<ReadingHistory> History(Guid sample, CancellationToken cancel = default);
}

/// <summary>Keeps the sketches, the folded parts and the instrument list, under the same rule as <see cref="IVehicleStore"/>.</summary>
public interface IBenchStore
{
    Task<Versioned<SampleSketch>?> Sketch(Guid sample, CancellationToken cancel = default);

    Task<Saved<SampleSketch>> Save(SampleSketch row, int basedOn, CancellationToken cancel = default);

    Task<Versioned<FoldedPart>?> Folded(Guid sample, CancellationToken cancel = default);

    Task<Saved<FoldedPart>> Save(FoldedPart row, int basedOn, CancellationToken cancel = default);

    Task<ImmutableArray<Versioned<OwnedInstrument>>> Instruments(CancellationToken cancel = default);

    Task<Saved<OwnedInstrument>> Save(OwnedInstrument row, int basedOn, CancellationToken cancel = default);
}
