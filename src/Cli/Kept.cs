using System.CommandLine;
using WitnessMark.Maths;
using WitnessMark.Records;
using WitnessMark.Stores;

namespace WitnessMark.Cli;

/// <summary>The vehicles that stand in a file of records.</summary>
static class Kept
{
    public static Option<string> Db() => new("--db") { Description = "The records' SQLite file.", Required = true };

    /// <summary>Records that are there; none are made.</summary>
    public static Task<RecordRoom> Open(string path, CancellationToken stop) => File.Exists(path) ? RecordRoom.Open(path, stop)
        : throw new RefusedException(Refusal.Of("--db", path, "name a file of records that is there"));

    /// <param name="name">Without case; null for all of them.</param>
    public static async Task<List<VehicleTree>> Vehicles(string path, string? name, CancellationToken stop)
    {
        var store = (await Open(path, stop)).Vehicles;
        var all = await store.Vehicles(stop);
        var trees = new List<VehicleTree>();
        foreach (var (vehicle, _) in all)
            if ((name is null || Same(vehicle.Name, name)) && await store.Tree(vehicle.Id, stop) is { } tree) trees.Add(tree);
        if (trees.Count == 0 && name is not null)
            throw new RefusedException(Refusal.Of("--vehicle", name, all.IsEmpty ? "no vehicle stands in these records yet" : $"give one of {string.Join(", ", all.Select(v => v.Row.Name))}"));
        return trees;
    }

    static bool Same(string a, string b) => string.Equals(a, b.Trim(), StringComparison.OrdinalIgnoreCase);
}
