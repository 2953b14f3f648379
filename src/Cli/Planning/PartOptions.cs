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
    public KeptPart? Open(ParseResult parsed)
    {
        if (parsed.GetValue(_db) is not { } path) return null;
        if (!File.Exists(path)) throw new RefusedException(Refusal.Of("--db", path, "name a file of records that is there"));
        var name = parsed.GetValue(_part) ?? throw new RefusedException(Refusal.Of("--part", null, "name the part that the job is for"));
        return KeptPart.Find(path, name, parsed.GetRequiredValue(_hand)).GetAwaiter().GetResult();
    }
}

/// <summary>A part in the records, with the shop that makes it.</summary>
sealed record KeptPart(RecordRoom Room, Part Part, Shop Shop)
{
    public string Reference => Part.Reference;

    public static async Task<KeptPart> Find(string path, string name, string hand)
    {
        var room = await RecordRoom.Open(path);
        foreach (var vehicle in await room.Vehicles.Vehicles())
        {
            var tree = await room.Vehicles.Tree(vehicle.Row.Id);
            var found = tree?.Parts.FirstOrDefault(p => Same(p.Row.Name, name) && (hand.Length == 0 || Same(p.Row.Hand.ToString(), hand)));
            if (found is { Row: { } part }) return new(room, part, (await room.Jobs.Shop()).Row);
        }
        throw new RefusedException(Refusal.Of("--part", $"{name} {hand}".Trim(), "name a part that stands in the records"));
    }

    /// <summary>The same card made again takes the place of the one before.</summary>
    public void Land(CardResult card)
    {
        var id = NamedId.Of(Part.Id, $"job {card.Card.Title}");
        var standing = Room.Jobs.Jobs(VehicleOf()).GetAwaiter().GetResult().FirstOrDefault(j => j.Row.Id == id);
        Room.Jobs.Save(card.AsJob(id, Part.Id), standing.Version).GetAwaiter().GetResult();
    }

    Guid VehicleOf() => Room.Vehicles.Vehicles().GetAwaiter().GetResult()
        .First(v => Room.Vehicles.Tree(v.Row.Id).GetAwaiter().GetResult()!.Parts.Any(p => p.Row.Id == Part.Id)).Row.Id;

    static bool Same(string a, string b) => string.Equals(a, b.Trim(), StringComparison.OrdinalIgnoreCase);
}
