using System.Diagnostics;
using WitnessMark.FrontOffice.TakeInVehicle;
using WitnessMark.Web.Tests;

namespace WitnessMark.Browser.Stores;

/// <summary>A host of its own with the demonstration van in it, so that what one test keeps meets no other.</summary>
sealed class Shed(HostProcess host, TakeInResult van) : IAsyncDisposable
{
    /// <summary>The smallest picture there is: one grey pixel (PNG, W3C).</summary>
    public static byte[] Png { get; } = Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg==");

    public Uri Address => host.Address;

    public TakeInResult Van => van;

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

    public ValueTask DisposeAsync() => host.DisposeAsync();
}
