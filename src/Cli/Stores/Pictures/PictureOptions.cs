using System.Collections.Immutable;
using System.CommandLine;
using WitnessMark.Maths;
using WitnessMark.Records;
using WitnessMark.Stores;
using WitnessMark.Stores.Photographs;

namespace WitnessMark.Cli.Stores.Pictures;

/// <summary>Which vehicle of which records, and which part of it pictures show.</summary>
sealed class PictureOptions
{
    readonly Option<string> _db = Kept.Db();
    readonly Option<string?> _vehicle = new("--vehicle") { Description = "Name of the vehicle, where there is more than one." };
    readonly Option<string?> _part = new("--part") { Description = "Name of the part they show." };
    readonly Option<string> _hand = new("--hand") { Description = "LH or RH, where the part is handed.", DefaultValueFactory = _ => "" };

    public Symbol[] All => [_db, _vehicle, _part, _hand];

    public async Task<KeptPictures> Open(ParseResult parsed, CancellationToken stop)
    {
        var (path, name) = (parsed.GetRequiredValue(_db), parsed.GetValue(_vehicle));
        var room = await Kept.Open(path, stop);
        if (await Kept.Vehicles(path, name, stop) is not [var tree])
            throw new RefusedException(Refusal.Of("--vehicle", name, "name the one vehicle that is meant"));
        var part = parsed.GetValue(_part) is { } called ? Part(tree, called, parsed.GetRequiredValue(_hand)) : null;
        return new(room, tree, part, await room.Albums.Of(tree.Vehicle.Row.Id, stop));
    }

    static Part Part(VehicleTree tree, string name, string hand) =>
        tree.Parts.Select(p => p.Row).Where(p => Same(p.Name, name) && (hand.Length == 0 || Same(p.Hand.ToString(), hand))).ToList() switch
        {
            [var one] => one,
            [] => throw new RefusedException(Refusal.Of("--part", $"{name} {hand}".Trim(), $"name a part of {tree.Vehicle.Row.Name}; wmark parts find looks for it")),
            _ => throw new RefusedException(Refusal.Of("--part", name, "several bear this name; give --hand LH or RH too")),
        };

    static bool Same(string a, string b) => string.Equals(a, b.Trim(), StringComparison.OrdinalIgnoreCase);
}

/// <summary>The album of one vehicle.</summary>
/// <param name="Part">The one that was named; null for all of the vehicle.</param>
sealed record KeptPictures(RecordRoom Room, VehicleTree Tree, Part? Part, PictureAlbum Album)
{
    public Guid Vehicle => Tree.Vehicle.Row.Id;

    /// <summary>Those of the part that was named and with all of the words, the newest first.</summary>
    public ImmutableArray<PictureTaken> Fitting(string words) => Album.Find(new(Part?.Id, Words: words, Take: int.MaxValue)).Rows;

    /// <summary>Empty for the whole vehicle.</summary>
    public string NameOf(Guid? part) => part is null ? ""
        : Tree.Parts.FirstOrDefault(p => p.Row.Id == part).Row is { } row ? row.Hand == Hand.None ? row.Name : $"{row.Name} {row.Hand}" : "a part that is no longer listed";
}
