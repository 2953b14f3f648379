using System.Collections.Immutable;
using System.CommandLine;
using WitnessMark.FrontOffice.PlanState;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Records;
using WitnessMark.Stores;

namespace WitnessMark.Cli.Planning;

/// <summary>Which vehicle of which records.</summary>
sealed class PlanOptions
{
    readonly Option<string> _db = Kept.Db();
    readonly Option<string?> _vehicle = new("--vehicle") { Description = "Name of the vehicle, where there is more than one." };

    public Symbol[] All => [_db, _vehicle];

    public async Task<KeptPlan> Open(ParseResult parsed, TimeProvider clock, CancellationToken stop) =>
        await Open(parsed.GetRequiredValue(_db), parsed.GetValue(_vehicle), clock, stop);

    public static async Task<KeptPlan> Open(string path, string? name, TimeProvider clock, CancellationToken stop)
    {
        var room = await Kept.Open(path, stop);
        var vehicles = (await room.Vehicles.Vehicles(stop)).Where(v => name is null || string.Equals(v.Row.Name, name.Trim(), StringComparison.OrdinalIgnoreCase)).ToList();
        if (vehicles is not [var one])
            throw new RefusedException(Refusal.Of("--vehicle", name, vehicles.Count == 0 ? "name a vehicle that stands in the records" : $"there are several: name one of {string.Join(", ", vehicles.Select(v => v.Row.Name))}"));
        var today = DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        return new(room, (await PlanState.Open(one.Row.Id, room.Vehicles, room.Jobs, room.Hours, today, stop))!);
    }
}

/// <summary>A vehicle in the records with its plan.</summary>
sealed record KeptPlan(RecordRoom Room, PlanState State)
{
    public VehicleTree Tree => State.Tree;

    public ImmutableArray<Versioned<Job>> Jobs => State.Jobs;

    public ImmutableArray<Job> Rows => [.. Jobs.Select(j => j.Row)];
}
