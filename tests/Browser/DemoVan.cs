using WitnessMark.FrontOffice.TakeInVehicle;
using WitnessMark.Records;

namespace WitnessMark.Browser;

/// <summary>The demonstration van as its files stand, put into a host's records.</summary>
static class DemoVan
{
    public static async Task<TakeInResult> Load(string database)
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (root is not null && !File.Exists(Path.Combine(root.FullName, "WitnessMark.slnx"))) root = root.Parent;
        string Text(string name) => File.ReadAllText(Path.Combine(root!.FullName, "demo", name));
        string? Sheet(string name) => File.Exists(Path.Combine(root!.FullName, "demo", name)) ? Text(name) : null;
        var taken = TakeInVehicle.Run(new(Text("vehicle.csv"), Text("parts.csv"), Text("samples.csv"), Sheet, new DateTimeOffset(2026, 11, 20, 9, 0, 0, TimeSpan.Zero)));
        var room = await RecordRoom.Open(database);
        await room.Vehicles.TakeIn(taken.File);
        foreach (var sketch in taken.Sketches) await room.Bench.Save(sketch, basedOn: 0);
        foreach (var folded in taken.Folded) await room.Bench.Save(folded, basedOn: 0);
        foreach (var instrument in taken.Instruments) await room.Bench.Save(instrument, basedOn: 0);
        await room.Readings.Append(taken.Readings);
        return taken;
    }

    /// <summary>The address of the sample whose part has this name.</summary>
    public static string Address(TakeInResult van, string part)
    {
        var p = van.File.Parts.First(x => x.Name == part && van.File.Samples.Any(s => s.PartId == x.Id));
        return $"vehicle/{van.File.Vehicle.Id}/part/{p.Id}/sample/{van.File.Samples.First(s => s.PartId == p.Id).Id}";
    }
}
