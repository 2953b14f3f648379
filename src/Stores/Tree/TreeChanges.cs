using System.Collections.Immutable;

namespace WitnessMark.Stores;

/// <summary>One row before and after.</summary>
/// <param name="Before">Null: the row is new.</param>
/// <param name="After">Null: the row is taken off.</param>
/// <param name="BasedOn">The version of <paramref name="Before"/>; 0 for a new row.</param>
public sealed record RowChange<T>(T? Before, T? After, int BasedOn) where T : class
{
    public static RowChange<T> Add(T row) => new(null, row, 0);

    public static RowChange<T> To(Versioned<T> before, T after) => new(before.Row, after, before.Version);

    /// <summary>What takes this change back, once it has been applied.</summary>
    public RowChange<T> Undo => new(After, Before, After is null ? 0 : BasedOn + 1);

    /// <summary>The row after, or the one before when it is taken off.</summary>
    public T Row => After ?? Before!;
}

/// <summary>Changes of one vehicle's tree that are made together or not at all.</summary>
public sealed record TreeChanges(
    Guid VehicleId,
    ImmutableArray<RowChange<VehicleSystem>> Systems,
    ImmutableArray<RowChange<Assembly>> Assemblies,
    ImmutableArray<RowChange<Part>> Parts)
{
    public int Count => Systems.Length + Assemblies.Length + Parts.Length;

    public TreeChanges Undo => new(VehicleId, [.. Systems.Select(c => c.Undo)], [.. Assemblies.Select(c => c.Undo)], [.. Parts.Select(c => c.Undo)]);
}

/// <summary>What came of a set of changes.</summary>
/// <param name="Rows">How many rows were changed; 0 when any stood in the way.</param>
/// <param name="InTheWay">One sentence for each row that stood in the way; empty when all was done.</param>
public sealed record Applied(int Rows, ImmutableArray<string> InTheWay)
{
    public bool Done => InTheWay.IsEmpty;

    /// <summary>What to tell the person.</summary>
    public string Words => Done ? $"{Rows} {(Rows == 1 ? "row" : "rows")} changed."
        : $"Nothing was changed: {string.Join(" ", InTheWay.Take(MostTold))}{(InTheWay.Length > MostTold ? $" And {InTheWay.Length - MostTold} more." : "")}";

    const int MostTold = 10;
}
