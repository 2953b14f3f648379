using System.Net;
using System.Net.Http.Json;
using WitnessMark.Tests;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Tests.Pairing;

/// <summary>The disk under the records is full: the host says so and keeps what it has acknowledged, and goes on when there is room again.</summary>
[Truth(Grade.SecondImplementation, "the kernel's own tmpfs of a given size, filled to the last block")]
public sealed class FullDiskTests
{
    [Fact]
    public async Task What_cannot_be_kept_is_refused_as_507_and_what_was_acknowledged_stands()
    {
        await using var host = await HostProcess.StartOnSmallDisk(4096);
        var bench = await Bench.Lay(host.Http);
        Assert.Equal(HttpStatusCode.OK, (await bench.Post(host.Http, bench.Reading("H1", "H2", "31.5"))).StatusCode);
        var filler = host.Beside("filler");
        Fill(filler);

        var acknowledged = new HashSet<Guid>((await bench.Standing(host.Http)).Select(r => r.Id));
        HttpResponseMessage? refused = null;
        var lost = bench.Reading("H1", "H2", "31.6");
        for (var i = 0; i < 400 && refused is null; i++)
        {
            // What room the log still had in its last block is used up first.
            lost = bench.Reading("H1", "H2", $"{31 + i / 1000.0:0.000}") with { Note = new string('n', 2000) };
            var response = await bench.Post(host.Http, lost);
            if (response.IsSuccessStatusCode) acknowledged.Add(lost.Id);
            else refused = response;
        }
        Assert.Equal(HttpStatusCode.InsufficientStorage, refused!.StatusCode);
        Assert.Contains("full", (await refused.Content.ReadFromJsonAsync(WireJson.Default.Refused))!.Refusal);
        Assert.Equal(acknowledged, [.. (await bench.Standing(host.Http)).Select(r => r.Id)]);

        var picture = await host.Http.PostAsync("api/pictures", new ByteArrayContent(Picture()));
        Assert.Equal(HttpStatusCode.InsufficientStorage, picture.StatusCode);

        File.Delete(filler);
        Assert.Equal(HttpStatusCode.OK, (await bench.Post(host.Http, lost)).StatusCode);
        acknowledged.Add(lost.Id);
        Assert.Equal(acknowledged, [.. (await bench.Standing(host.Http)).Select(r => r.Id)]);
    }

    /// <summary>A PNG of its head alone and many bytes after it: large, and unlike any other.</summary>
    static byte[] Picture() =>
        [.. Convert.FromBase64String("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNgAAAAAgABSK+kcQAAAABJRU5ErkJggg=="), .. new byte[600_000]];

    static void Fill(string path)
    {
        using var file = new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.None, bufferSize: 0);
        var block = new byte[4096];
        try
        {
            while (true) file.Write(block);
        }
        catch (IOException)
        {
            // The last block is written: there is no room left.
        }
    }
}
