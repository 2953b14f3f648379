using System.Text.Json;
using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using WitnessMark.Tests.FrontOffice.MeasurePhoto;

namespace WitnessMark.Tests.Cli.Stores;

public class PictureTests
{
    [Fact]
    [Truth(Grade.SecondImplementation, "MetadataExtractor 2.4 finds place and serial number in what was added, and neither in what goes out")]
    public void A_picture_goes_in_untouched_and_comes_out_without_place_and_serial_number()
    {
        using var place = new Place();
        var db = Loaded(place);
        var careless = Careless();
        File.WriteAllBytes(place.At("one.jpg"), careless);
        Assert.Contains(ImageMetadataReader.ReadMetadata(new MemoryStream(careless)), d => d is GpsDirectory);

        var added = Told.By("picture", "add", place.At("one.jpg"), "--db", db, "--part", "Dynamo mounting plate", "--words", "plate, front", "--json");
        Assert.Equal((0, ""), (added.Code, added.Error));
        var id = JsonDocument.Parse(added.Out).RootElement.GetProperty("added")[0].GetProperty("picture").GetString()!;
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(careless)), id);
        Assert.Equal(careless, File.ReadAllBytes(place.At("one.jpg")));
        var kept = Assert.Single(System.IO.Directory.GetFiles(db + ".pictures", "*", SearchOption.AllDirectories), f => Path.GetFileName(f).StartsWith(id[..8], StringComparison.Ordinal));
        Assert.Equal(careless, File.ReadAllBytes(kept));
        Assert.Contains("0 added, 1 there already.", Told.By("picture", "add", place.At("one.jpg"), "--db", db, "--part", "Dynamo mounting plate").Out);
        Assert.Contains("Dynamo mounting plate: plate, front", Told.By("picture", "list", "--db", db, "--words", "FRONT").Out);

        var exported = Told.By("picture", "export", "--db", db, "--out", place.At("out"));
        Assert.Equal((0, ""), (exported.Code, exported.Error));
        Assert.StartsWith("1 of 1 pictures", exported.Out);
        var picture = File.ReadAllBytes(Assert.Single(System.IO.Directory.GetFiles(place.At("out"), "*.jpg")));
        Assert.DoesNotContain(ImageMetadataReader.ReadMetadata(new MemoryStream(picture)), d => d is GpsDirectory);
        Assert.All(Noted.Secrets, secret => Assert.Equal(-1, picture.AsSpan().IndexOf(secret)));
        Assert.Contains("\"plate, front\"", File.ReadAllText(place.At("out/list.csv")));
    }

    [Theory]
    [InlineData("picture add heic.jpg --db van.db", "choose JPEG")]
    [InlineData("picture add whole.jpg half.jpg --db van.db", "ends before the picture does")]
    [InlineData("picture add none.jpg --db van.db", "none.jpg")]
    [InlineData("picture add whole.jpg --db van.db --part gearbox", "gearbox")]
    [InlineData("picture list --db none.db", "none.db")]
    [InlineData("picture export --db van.db --words nothing", "fewer words")]
    [Truth(Grade.Property, "one sentence, exit code 2, and nothing of the list is kept")]
    public void What_cannot_be_done_is_one_sentence_and_nothing_is_kept(string command, string named)
    {
        using var place = new Place();
        var db = Loaded(place);
        File.WriteAllBytes(place.At("whole.jpg"), Careless());
        File.WriteAllBytes(place.At("half.jpg"), Careless()[..900]);
        File.WriteAllBytes(place.At("heic.jpg"), [0, 0, 0, 24, .. "ftypheic"u8, .. new byte[40]]);
        var told = Told.By([.. command.Split(' ').Select(a => a.Contains('.') ? place.At(a) : a)]);
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.Contains(named, Assert.Single(told.Error.TrimEnd('\n').Split('\n')));
        Assert.Equal("no picture fits\n", Told.By("picture", "list", "--db", db).Out);
    }

    /// <summary>The demonstration's photograph with what a careless phone writes into it.</summary>
    static byte[] Careless()
    {
        var (plain, notes) = (File.ReadAllBytes("demo/photos/horn-plate.jpg"), (byte[])[.. "Exif\0\0"u8, .. Noted.Tiff(6, 26)]);
        return [.. plain[..2], 0xFF, 0xE1, (byte)((notes.Length + 2) >> 8), (byte)(notes.Length + 2), .. notes, .. plain[2..]];
    }

    static string Loaded(Place place)
    {
        Assert.Equal(0, Told.By("demo", "load", "--db", place.At("van.db")).Code);
        return place.At("van.db");
    }
}
