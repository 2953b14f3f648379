using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Stores.Intake;

namespace WitnessMark.FrontOffice.TakeInList;

/// <param name="Bytes">The file as it is.</param>
/// <param name="Today">The day of routes that come without one.</param>
public sealed record TakeInListRequest(ReadOnlyMemory<byte> Bytes, VehicleTree Tree, ListSettings Settings, DateOnly Today);

/// <summary>What came of taking a list.</summary>
public sealed record TakenList(TreeChanges Changes, Applied Applied)
{
    /// <summary>Applied, it takes the list back; it is refused when rows were changed since.</summary>
    public TreeChanges Undo => Changes.Undo;

    public int NewSystems => Changes.Systems.Length;

    public int NewAssemblies => Changes.Assemblies.Length;

    public int NewParts => Changes.Parts.Count(c => c.Before is null);

    public int UpdatedParts => Changes.Parts.Count(c => c.Before is not null);

    /// <summary>What to tell the person.</summary>
    public string Words => Applied.Done
        ? $"{NewParts} {(NewParts == 1 ? "part" : "parts")} added, {UpdatedParts} updated, {NewSystems} new {(NewSystems == 1 ? "system" : "systems")}, {NewAssemblies} new {(NewAssemblies == 1 ? "assembly" : "assemblies")}."
        : Applied.Words;
}

/// <summary>Takes a typed parts list into a vehicle: looked at first, then all of it or nothing.</summary>
public static class TakeInList
{
    /// <param name="progress">Share read, 0 to 1.</param>
    /// <exception cref="RefusedException">The file is no list.</exception>
    public static Task<ListPreview> Preview(TakeInListRequest request, IProgress<double>? progress = null, CancellationToken stop = default) =>
        ListReader.Preview(request.Bytes, request.Tree, request.Settings, request.Today, progress, stop);

    /// <param name="answers">What to do with duplicates, by line; the others go as proposed.</param>
    /// <exception cref="RefusedException">The list cannot be read yet, or an answer does not fit; nothing is kept.</exception>
    public static async Task<TakenList> Take(
        ListPreview preview, VehicleTree tree, IReadOnlyDictionary<int, DuplicateAnswer> answers, IVehicleStore store, CancellationToken stop = default)
    {
        var changes = ListIntake.Changes(preview, tree, answers);
        return new(changes, changes.Count == 0 ? new(0, []) : await store.Apply(changes, stop));
    }
}
