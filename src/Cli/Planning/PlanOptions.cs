using System.Collections.Immutable;
using System.CommandLine;
using WitnessMark.FrontOffice.PlanNext;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Records;
using WitnessMark.Stores;

namespace WitnessMark.Cli.Planning;

/// <summary>Which vehicle of which records.</summary>
sealed class PlanOptions
{
    readonly Option<string> _db = new("--db") { Description = "The records' SQLite file.", Required = true };
    readonly Option<string?> _vehicle = new("--vehicle") { Description = "Name of the vehicle, where there is more than one." };

    public Symbol[] All => [_db, _vehicle];

    public async Task<KeptPlan> Open(ParseResult parsed, CancellationToken stop)
    {
        var path = parsed.GetRequiredValue(_db);
        if (!File.Exists(path)) throw new RefusedException(Refusal.Of("--db", path, "name a file of records that is there"));
        var room = await RecordRoom.Open(path, stop);
        var name = parsed.GetValue(_vehicle);
        var vehicles = (await room.Vehicles.Vehicles(stop)).Where(v => name is null || string.Equals(v.Row.Name, name.Trim(), StringComparison.OrdinalIgnoreCase)).ToList();
        if (vehicles is not [var one]) throw new RefusedException(Refusal.Of("--vehicle", name, vehicles.Count == 0 ? "name a vehicle that stands in the records" : "there are several: name one"));
        return new(room, (await room.Vehicles.Tree(one.Row.Id, stop))!, await room.Jobs.Jobs(one.Row.Id, stop));
    }
}

/// <summary>A vehicle in the records with its jobs.</summary>
sealed record KeptPlan(RecordRoom Room, VehicleTree Tree, ImmutableArray<Versioned<Job>> Jobs)
{
    public ImmutableArray<Job> Rows => [.. Jobs.Select(j => j.Row)];

    public async Task<PlanNextRequest> Request(CancellationToken stop) =>
        new(Tree, Rows, [.. (await Room.Jobs.Milestones(Tree.Vehicle.Row.Id, stop)).Select(m => m.Row)]);
}
