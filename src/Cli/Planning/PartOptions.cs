using System.CommandLine;
using WitnessMark.FrontOffice.CardJob;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Records;
using WitnessMark.Stores;

namespace WitnessMark.Cli.Planning;

/// <summary>Which part of which records a job is for.</summary>
sealed class PartOptions
{
    readonly Option<string?> _db = new("--db") { Description = "The records' SQLite file." };
    readonly Option<string?> _part = new("--part") { Description = "Name of the part in the records." };
    readonly Option<string> _hand = new("--hand") { Description = "LH or RH, where the part is handed.", DefaultValueFactory = _ => "" };

    public Symbol[] All => [_db, _part, _hand];

    /// <summary>Null when no records are named.</summary>
    public async Task<KeptPart?> Open(ParseResult parsed, CancellationToken stop)
    {
        if (parsed.GetValue(_db) is not { } path) return null;
        var name = parsed.GetValue(_part) ?? throw new RefusedException(Refusal.Of("--part", null, "name the part that the job is for"));
        return await KeptPart.Find(await Kept.Open(path, stop), name, parsed.GetRequiredValue(_hand), stop);
    }
}

/// <summary>A part in the records, with the shop that makes it.</summary>
sealed record KeptPart(RecordRoom Room, Guid Vehicle, Part Part, Shop Shop)
{
    public string Reference => Part.Reference;

    public static async Task<KeptPart> Find(RecordRoom room, string name, string hand, CancellationToken stop)
    {
        foreach (var vehicle in await room.Vehicles.Vehicles(stop))
        {
            var tree = await room.Vehicles.Tree(vehicle.Row.Id, stop);
            var found = tree?.Parts.FirstOrDefault(p => Same(p.Row.Name, name) && (hand.Length == 0 || Same(p.Row.Hand.ToString(), hand)));
            if (found is { Row: { } part }) return new(room, vehicle.Row.Id, part, (await room.Jobs.Shop(stop)).Row);
        }
        throw new RefusedException(Refusal.Of("--part", $"{name} {hand}".Trim(), "name a part that stands in the records"));
    }

    /// <summary>The same card made again takes the place of the one before.</summary>
    public async Task Land(CardResult card, CancellationToken stop)
    {
        var id = NamedId.Of(Part.Id, $"job {card.Card.Title}");
        var (job, version) = card.Landed(await Room.Jobs.Jobs(Vehicle, stop), id, Vehicle, Part);
        await Room.Jobs.Save(job, version, stop);
    }

    static bool Same(string a, string b) => string.Equals(a, b.Trim(), StringComparison.OrdinalIgnoreCase);
}
