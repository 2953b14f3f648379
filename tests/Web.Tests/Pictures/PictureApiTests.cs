using System.Collections.Immutable;
using System.IO.Compression;
using System.Net;
using System.Net.Http.Json;
using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using SkiaSharp;
using StbImageSharp;
using WitnessMark.Stores.Photographs;
using WitnessMark.Tests;
using WitnessMark.Tests.FrontOffice.MeasurePhoto;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Tests.Pictures;

public sealed class PictureApiTests(RunningHost running) : IClassFixture<RunningHost>
{
    HttpClient Http => running.Host.Http;

    /// <summary>A JPEG with place, owner and serial number in its notes, on its side.</summary>
    static byte[] Careless(byte shade = 90)
    {
        using var bitmap = new SKBitmap(640, 480);
        bitmap.Erase(new SKColor(shade, 120, 60));
        using var data = bitmap.Encode(SKEncodedImageFormat.Jpeg, 90);
        var (plain, notes) = (data!.ToArray(), (byte[])[.. "Exif\0\0"u8, .. Noted.Tiff(6, 26)]);
        return [.. plain[..2], 0xFF, 0xE1, (byte)((notes.Length + 2) >> 8), (byte)(notes.Length + 2), .. notes, .. plain[2..]];
    }

    [Fact]
    [Truth(Grade.Property, "the original comes back bit for bit, also a part of it (RFC 9110, 14.2)")]
    public async Task The_original_is_untouched()
    {
        var (file, id) = (Careless(), await Keep(Careless()));
        Assert.Equal(file, await Http.GetByteArrayAsync($"api/pictures/{id}"));
        var request = new HttpRequestMessage(HttpMethod.Get, $"api/pictures/{id}");
        request.Headers.Range = new(2, 9);
        var part = await Http.SendAsync(request);
        Assert.Equal((HttpStatusCode.PartialContent, 8), (part.StatusCode, (await part.Content.ReadAsByteArrayAsync()).Length));
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "StbImageSharp 2.30 reads the size; a tag that is known is answered by 304 (RFC 9110, 13.1.2)")]
    public async Task Smaller_copies_are_upright_and_kept_by_the_browser()
    {
        var id = await Keep(Careless(91));
        var response = await Http.GetAsync($"api/pictures/{id}/small");
        var seen = ImageResult.FromMemory(await response.Content.ReadAsByteArrayAsync());
        Assert.Equal((240, 320), (seen.Width, seen.Height));
        Assert.Contains("immutable", response.Headers.CacheControl!.ToString());
        var again = new HttpRequestMessage(HttpMethod.Get, $"api/pictures/{id}/small");
        again.Headers.IfNoneMatch.Add(response.Headers.ETag!);
        Assert.Equal(HttpStatusCode.NotModified, (await Http.SendAsync(again)).StatusCode);
        // What is lost is made again.
        System.IO.Directory.Delete(running.Host.Database + ".pictures/small", recursive: true);
        Assert.Equal(HttpStatusCode.OK, (await Http.GetAsync($"api/pictures/{id}/view")).StatusCode);
        Assert.Equal(HttpStatusCode.NotFound, (await Http.GetAsync($"api/pictures/{new string('0', 64)}/small")).StatusCode);
    }

    [Fact]
    [Truth(Grade.Property, "a picture whose coded data are spoilt is shown as a sentence, never as a fault of the host")]
    public async Task What_cannot_be_shown_is_told()
    {
        // The head is whole and the coded data are nothing but stuffing.
        var file = Careless(92);
        var scan = file.AsSpan().LastIndexOf((ReadOnlySpan<byte>)[0xFF, 0xDA]);
        var spoilt = (byte[])[.. file[..(scan + 2)], 0, 2, .. file[^2..]];
        var response = await Http.GetAsync($"api/pictures/{await Keep(spoilt)}/small");
        Assert.Equal((HttpStatusCode.OK, "image/svg+xml"), (response.StatusCode, response.Content.Headers.ContentType!.MediaType));
        Assert.Contains("The original is kept", await response.Content.ReadAsStringAsync());
    }

    [Fact]
    [Truth(Grade.Property, "HEIC, a truncated file and text are refused in one sentence that says what would be right")]
    public async Task What_is_no_picture_is_refused()
    {
        (byte[], string)[] bad = [([0, 0, 0, 24, .. "ftypheic"u8, .. new byte[40]], "choose JPEG"), (Careless()[..900], "ends before the picture does"), ("part,qty"u8.ToArray(), "JPEG, PNG or WebP")];
        foreach (var (bytes, words) in bad)
        {
            var response = await Http.PostAsync("api/pictures", new ByteArrayContent(bytes));
            Assert.Equal(HttpStatusCode.BadRequest, response.StatusCode);
            Assert.Contains(words, (await response.Content.ReadFromJsonAsync(WireJson.Default.Refused))!.Refusal);
        }
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "MetadataExtractor 2.4 finds place and serial number before and neither after")]
    public async Task Place_and_serial_numbers_are_gone_from_what_goes_out()
    {
        var (bench, id) = (await Bench.Lay(Http), await Keep(Careless(93)));
        Assert.Contains(ImageMetadataReader.ReadMetadata(new MemoryStream(Careless(93))), d => d is GpsDirectory);
        Nothing(await Http.GetByteArrayAsync($"api/pictures/{id}/clean"));
        var taken = new PictureTaken(Guid.NewGuid(), bench.Vehicle, bench.Part, id, "=plate, \"front\"", DateTimeOffset.UnixEpoch.AddYears(61), "page");
        await Http.PostAsync($"api/vehicles/{bench.Vehicle}/desk/PictureTaken", JsonContent.Create([taken], DeskJson.Of<ImmutableArray<PictureTaken>>()));

        var found = await Http.GetFromJsonAsync($"api/vehicles/{bench.Vehicle}/pictures?part={bench.Part}&words=PLATE&month=2031-02", DeskJson.Of<PictureStretch>());
        Assert.Equal((taken.Id, new PictureMonth("2031-01", 1)), (Assert.Single(found!.Rows).Id, Assert.Single(found.Months)));
        Assert.Equal(0, (await Http.GetFromJsonAsync($"api/vehicles/{bench.Vehicle}/pictures/{taken.Id}", DeskJson.Of<PictureOpened>()))!.Layer.Version);

        using var zip = await Zip(bench.Vehicle, originals: false);
        Assert.Equal(["2031-01-01-00001.jpg", "list.csv"], zip.Entries.Select(e => e.FullName));
        Nothing(Bytes(zip.Entries[0]));
        var list = System.Text.Encoding.UTF8.GetString(Bytes(zip.Entries[1]));
        Assert.Contains("Floor plate,\"'=plate, \"\"front\"\"\"", list);
        using var whole = await Zip(bench.Vehicle, originals: true);
        Assert.Equal(Careless(93), Bytes(whole.Entries[0]));
        Nothing(await Http.GetByteArrayAsync($"api/vehicles/{bench.Vehicle}/pictures/{taken.Id}/marked"));
    }

    [Fact]
    [Truth(Grade.Property, "the work in the background tells how far it is, rests and goes on")]
    public async Task The_work_on_smaller_copies_is_told()
    {
        Assert.True((await Work(HttpMethod.Post, "/pause")).Paused);
        Assert.False((await Work(HttpMethod.Post, "/resume")).Paused);
        await Keep(Careless(94));
        PictureWork work;
        do work = await Work(HttpMethod.Get, "");
        while (work.Waiting > 0);
        Assert.True(work.Made > 0);
    }

    static void Nothing(byte[] picture)
    {
        Assert.DoesNotContain(ImageMetadataReader.ReadMetadata(new MemoryStream(picture)), d => d is GpsDirectory);
        Assert.All(Noted.Secrets, secret => Assert.Equal(-1, picture.AsSpan().IndexOf(secret)));
    }

    async Task<ZipArchive> Zip(Guid vehicle, bool originals)
    {
        var asked = new ExportAsked(Guid.NewGuid(), null, false, "", [], originals, Marked: true);
        (await Http.PostAsync($"api/vehicles/{vehicle}/pictures/exports", JsonContent.Create(asked, DeskJson.Of<ExportAsked>()))).EnsureSuccessStatusCode();
        var file = await Http.GetByteArrayAsync($"api/vehicles/{vehicle}/pictures/exports/{asked.Id}/pictures.zip");
        var standing = await Http.GetFromJsonAsync($"api/vehicles/{vehicle}/pictures/exports/{asked.Id}", DeskJson.Of<ExportStanding>());
        Assert.Equal(("done", 1, 1), (standing!.State, standing.Done, standing.Total));
        return new(new MemoryStream(file));
    }

    static byte[] Bytes(ZipArchiveEntry entry)
    {
        using var from = entry.Open();
        using var to = new MemoryStream();
        from.CopyTo(to);
        return to.ToArray();
    }

    async Task<PictureWork> Work(HttpMethod method, string path)
    {
        using var response = await Http.SendAsync(new(method, $"api/pictures/making{path}"));
        return (await response.Content.ReadFromJsonAsync(DeskJson.Of<PictureWork>()))!;
    }

    async Task<string> Keep(byte[] bytes)
    {
        using var response = await Http.PostAsync("api/pictures", new ByteArrayContent(bytes));
        return (await response.Content.ReadFromJsonAsync(DeskJson.Of<KeptPicture>()))!.Id;
    }
}
