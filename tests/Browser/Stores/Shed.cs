using System.Diagnostics;
using WitnessMark.FrontOffice.TakeInVehicle;
using WitnessMark.Records;
using WitnessMark.Stores;
using WitnessMark.Stores.Judging;
using WitnessMark.Stores.Orders;
using WitnessMark.Stores.Outwork;
using WitnessMark.Stores.Places;
using WitnessMark.Web.Tests;

namespace WitnessMark.Browser.Stores;

/// <summary>A host of its own with the demonstration van in it, so that what one test keeps meets no other.</summary>
sealed class Shed(HostProcess host, TakeInResult van) : IAsyncDisposable
{
    /// <summary>The smallest picture there is: one grey pixel (PNG, W3C).</summary>
    public static byte[] Png { get; } = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==");

    public Uri Address => host.Address;

    public TakeInResult Van => van;

    public string Database => host.Database;

    public static async Task<Shed> Open()
    {
        var host = await HostProcess.Start();
        return new(host, await DemoVan.Load(host.Database));
    }

    public string Path(string page = "") => $"vehicle/{van.File.Vehicle.Id}{(page.Length > 0 ? $"/{page}" : "")}";

    public string Part(string name) => Path($"part/{van.File.Parts.First(p => p.Name == name).Id}");

    /// <summary>The first page as a printer would set it, PNG at 150 dpi (Poppler).</summary>
    public static async Task<byte[]> Rendered(byte[] pdf)
    {
        var folder = Directory.CreateTempSubdirectory("wm-tags-");
        try
        {
            var file = System.IO.Path.Combine(folder.FullName, "tags.pdf");
            await File.WriteAllBytesAsync(file, pdf);
            using var run = Process.Start(new ProcessStartInfo("pdftoppm", ["-png", "-r", "150", "-singlefile", file, System.IO.Path.Combine(folder.FullName, "page")]))!;
            await run.WaitForExitAsync();
            return await File.ReadAllBytesAsync(System.IO.Path.Combine(folder.FullName, "page.png"));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>Something on every page: parts that came off, an order, a box that went out and came back short, a shelf.</summary>
    public async Task Fill()
    {
        var desk = (await RecordRoom.Open(host.Database)).Desk;
        var vehicle = van.File.Vehicle.Id;
        var at = new DateTimeOffset(2026, 11, 21, 10, 0, 0, TimeSpan.Zero);
        var parts = van.File.Parts.Take(5).ToList();
        for (var i = 0; i < parts.Count; i++)
            await desk.CameOff.Append([new(Guid.NewGuid(), vehicle, parts[i].Id, at.AddMinutes(10 * i), "bench", [], "", $"B{i + 1}",
                [new("bolt", "1/4 BSF", 19.05, "hexagon, 0.445 AF", 4, i == 1 ? 3 : 4)], i == 0 ? [new("under the rear foot", 0.25, 2)] : [],
                "long lug to the rear", "rubbed at the lower edge", "", i is 0 or 3 ? [] : [parts[i - 1].Id])]);
        var firm = new Firm(Guid.NewGuid(), vehicle, "Brightside Platers", "plating", "at the old mill", "");
        await desk.Firms.Save(firm, 0);
        await desk.Orders.Save(new(Guid.NewGuid(), vehicle, firm.Id, new(2026, 10, 1), new(2026, 11, 1), null, [new(1, parts[0].Id, parts[0].Name, 2, new(12.5m, "GBP"))], null, ""), 0);
        await desk.Quotes.Save(new(Guid.NewGuid(), vehicle, firm.Id, parts[0].Id, Route.SendOut, parts[0].Name, 1, new(40, "GBP"), new(2026, 11, 1), new(2027, 1, 31), 14, ""), 0);
        var box = new Consignment(Guid.NewGuid(), vehicle, firm.Id, OutTrade.Plating, new(2026, 11, 2), new(2026, 11, 16), new Money(85, "GBP"), "bright zinc", true, false,
            [new(1, null, "wing bolts", 12, "bright zinc, 8 micrometre", "threads", []), new(2, parts[1].Id, parts[1].Name, 1, "bright zinc", "", [])]);
        await desk.Consignments.Save(box, 0);
        await desk.Returns.Append([new(Guid.NewGuid(), vehicle, box.Id, 1, 11, "one thread is bruised", [], at, "bench")]);
        var shelf = new Place(Guid.NewGuid(), vehicle, PlaceKind.Shelf, "Shelf C", null, "");
        var bin = new Place(Guid.NewGuid(), vehicle, PlaceKind.Bin, "C3", shelf.Id, "blue");
        await desk.Places.Save(shelf, 0);
        await desk.Places.Save(bin, 0);
        await desk.Moves.Append([new(Guid.NewGuid(), vehicle, parts[0].Id, bin.Id, "", at, "bench")]);
        await desk.Conditions.Append([new(Guid.NewGuid(), vehicle, parts[0].Id, ConditionGrade.Poor, "half of the lower edge is gone", [], [], at, "bench")]);
    }

    public ValueTask DisposeAsync() => host.DisposeAsync();
}
