using System.Text;
using MetadataExtractor;
using MetadataExtractor.Formats.Exif;
using StbImageSharp;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.FrontOffice.MeasurePhoto.Files;
using WitnessMark.Maths;
using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.Tests.FrontOffice.MeasurePhoto;

public class PictureStripTests
{
    static Raster Grey(int width = 61, int height = 43, ulong seed = 5)
    {
        var chance = new Chance(seed);
        return new(width, height, 1, [.. Enumerable.Range(0, width * height).Select(i => (byte)(100 + i % width + 20 * chance.Normal()))]);
    }

    static byte[] Jpeg(int turn = 6) => JpegMaker.Write(Grey(), 90,
        JpegMaker.Segment(0xE1, [.. "Exif\0\0"u8, .. Noted.Tiff(turn, 26)]),
        JpegMaker.Segment(0xE1, Noted.Xmp),
        JpegMaker.Segment(0xE2, [.. "MPF\0"u8, .. Encoding.ASCII.GetBytes(Noted.Serial)]),
        JpegMaker.Segment(0xED, [.. "Photoshop 3.0\0"u8, .. Encoding.ASCII.GetBytes(Noted.Owner)]),
        JpegMaker.Segment(0xFE, Encoding.ASCII.GetBytes(Noted.Place)))
        .Concat(Encoding.ASCII.GetBytes($"behind the end {Noted.Serial}")).ToArray();

    static byte[] Png(int turn = 6)
    {
        var plain = PictureFile.Png(Grey(), 4);
        const int afterHead = 8 + 25;
        return
        [
            .. plain[..afterHead],
            .. PngPart.Make("eXIf"u8, Noted.Tiff(turn, 26)),
            .. PngPart.Make("tEXt"u8, [.. "Author\0"u8, .. Encoding.ASCII.GetBytes(Noted.Owner)]),
            .. PngPart.Make("iTXt"u8, [.. "XML:com.adobe.xmp\0\0\0\0\0"u8, .. Noted.Xmp]),
            .. PngPart.Make("prVt"u8, Encoding.ASCII.GetBytes(Noted.Serial)),
            .. plain[afterHead..],
            .. Encoding.ASCII.GetBytes(Noted.Place),
        ];
    }

    /// <summary>A WebP of one colour (RFC 9649: lossless, no transform, five one-symbol codes) with notes and XMP.</summary>
    static byte[] WebP(int turn = 6)
    {
        byte[] Chunk(string name, byte[] body) => [.. Encoding.ASCII.GetBytes(name), .. BitConverter.GetBytes(body.Length), .. body, .. new byte[body.Length & 1]];
        byte[] inside =
        [
            .. "WEBP"u8,
            .. Chunk("VP8X", [0x0C, 0, 0, 0, 3, 0, 0, 2, 0, 0]),
            .. Chunk("VP8L", [0x2F, 3, 0x80, 0, 0, 0x88, 0x88, 8]),
            .. Chunk("EXIF", Noted.Tiff(turn, 26)),
            .. Chunk("XMP ", Noted.Xmp),
        ];
        return [.. "RIFF"u8, .. BitConverter.GetBytes(inside.Length), .. inside];
    }

    public static TheoryData<string, byte[]> Files => new() { { "jpeg", Jpeg() }, { "png", Png() }, { "webp", WebP() } };

    [Theory]
    [MemberData(nameof(Files))]
    [Truth(Grade.Property, "every byte string that was private is there before and nowhere after; the original is not written to")]
    public void Nothing_private_leaves_with_a_picture(string kind, byte[] file)
    {
        var before = file.ToArray();
        var stripped = PictureStrip.Of(file);
        Assert.Equal(before, file);
        foreach (var secret in Noted.Secrets)
            Assert.Equal((kind, true, false), (kind, file.AsSpan().IndexOf(secret) >= 0, stripped.AsSpan().IndexOf(secret) >= 0));
        Assert.Equal(stripped, PictureStrip.Of(stripped));
    }

    [Theory]
    [MemberData(nameof(Files))]
    [Truth(Grade.SecondImplementation, "MetadataExtractor 2.4.3 finds position and serial number before, and only the turn after")]
    public void Another_reader_finds_nothing_but_the_turn(string kind, byte[] file)
    {
        var before = ImageMetadataReader.ReadMetadata(new MemoryStream(file));
        Assert.NotEmpty(before.OfType<GpsDirectory>());
        Assert.Contains(before.OfType<ExifSubIfdDirectory>().SelectMany(d => d.Tags), t => t.Description == Noted.Serial);
        var after = ImageMetadataReader.ReadMetadata(new MemoryStream(PictureStrip.Of(file)));
        Assert.Empty(after.OfType<GpsDirectory>());
        Assert.Empty(after.OfType<ExifSubIfdDirectory>());
        Assert.DoesNotContain(after, d => d.Name is "XMP" or "IPTC" or "Photoshop" or "JpegComment" or "PNG-tEXt" or "PNG-iTXt");
        var turn = Assert.Single(after.OfType<ExifIfd0Directory>());
        Assert.Equal(6, turn.GetInt32(ExifDirectoryBase.TagOrientation));
        Assert.Equal((kind, 1), (kind, turn.TagCount));
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "StbImageSharp 2.30.16 decodes the same pixels before and after")]
    public void The_pixels_stay_as_they_were()
    {
        foreach (var file in new[] { Jpeg(), Png() })
        {
            var (before, after) = (ImageResult.FromMemory(file), ImageResult.FromMemory(PictureStrip.Of(file)));
            Assert.Equal((before.Width, before.Height), (after.Width, after.Height));
            Assert.Equal(before.Data, after.Data);
        }
    }

    [Theory]
    [MemberData(nameof(Files))]
    [Truth(Grade.SecondImplementation, "MetadataExtractor 2.4.3 reads the same turn and focal length")]
    public void Turn_and_lens_are_read_as_another_reader_reads_them(string kind, byte[] file)
    {
        var head = PictureHead.Read(file).Value;
        var told = ImageMetadataReader.ReadMetadata(new MemoryStream(file));
        Assert.Equal(told.OfType<ExifIfd0Directory>().First().GetInt32(ExifDirectoryBase.TagOrientation), head.Turn);
        Assert.Equal(told.OfType<ExifSubIfdDirectory>().First().GetInt32(ExifDirectoryBase.Tag35MMFilmEquivFocalLength), head.Focal35);
        Assert.Equal(kind == "webp" ? (4, 3) : (61, 43), (head.Width, head.Height));
    }

    [Fact]
    [Truth(Grade.Property, "a picture without notes stays without; one that stands upright gets none")]
    public void An_upright_picture_is_left_without_notes()
    {
        Assert.DoesNotContain("Exif", Encoding.Latin1.GetString(PictureStrip.Of(Jpeg(turn: 1))));
        Assert.DoesNotContain("eXIf", Encoding.Latin1.GetString(PictureStrip.Of(Png(turn: 1))));
    }
}
