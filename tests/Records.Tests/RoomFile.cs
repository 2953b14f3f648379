using WitnessMark.Stores;

namespace WitnessMark.Records.Tests;

/// <summary>A records file of its own for one test, with one vehicle, part and sample in it.</summary>
public abstract class RoomFile : IDisposable
{
    protected static readonly DateTimeOffset Noon = new(2031, 5, 4, 12, 0, 0, TimeSpan.FromHours(1));

    protected static readonly Vehicle Van = new(new Guid("00000000-0000-4000-8000-000000000001"), "van", "Invented", "One", 1934, "");
    protected static readonly VehicleSystem Body = new(new Guid("00000000-0000-4000-8000-000000000002"), Van.Id, "body", 0);
    protected static readonly Part Bracket = new(new Guid("00000000-0000-4000-8000-000000000003"), Body.Id, "bracket", "B-1", Hand.LH, 2, "rusted", new(Route.Remake, "thin", new(2031, 5, 1)));
    protected static readonly PartSample Original = new(new Guid("00000000-0000-4000-8000-000000000004"), Bracket.Id, "original", SampleOrigin.Borrowed, new("Aunt Ottilie", new(2031, 5, 1), new(2031, 6, 1)), [new("diameter", "H1", "", "clearance")]);

    readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("witness-mark-");

    protected string PathOf(string name) => Path.Combine(_folder.FullName, name);

    protected async Task<RecordRoom> Furnished()
    {
        var room = await RecordRoom.Open(PathOf("records.db"));
        await room.Vehicles.Save(Van, 0);
        await room.Vehicles.Save(Body, 0);
        await room.Vehicles.Save(Bracket, 0);
        await room.Vehicles.Save(Original, 0);
        return room;
    }

    protected static ReadingEntry Reading(int n) =>
        new(new Guid(n, 0, 0, new byte[8]), Original.Id, "centre distance", "H1", $"H{n}", "3 5/16\"", "", "rule", "", Noon.AddSeconds(n), "phone");

    public void Dispose()
    {
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        _folder.Delete(recursive: true);
        GC.SuppressFinalize(this);
    }
}
