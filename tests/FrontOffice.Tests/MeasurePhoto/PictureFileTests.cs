using System.Buffers.Binary;
using System.IO.Compression;
using StbImageSharp;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.FrontOffice.MeasurePhoto.Files;
using WitnessMark.Maths;
using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.Tests.FrontOffice.MeasurePhoto;

public class PictureFileTests
{
    /// <summary>Rows of random bytes with random filters are a PNG like any other.</summary>
    static byte[] RandomPng(int width, int height, byte bits, byte colour, bool interlaced, ulong seed)
    {
        var chance = new Chance(seed);
        var samples = colour switch { 2 => 3, 4 => 2, 6 => 4, _ => 1 };
        using var raw = new MemoryStream();
        foreach (var (x, y, right, down) in interlaced ? new[] { (0, 0, 8, 8), (4, 0, 8, 8), (0, 4, 4, 8), (2, 0, 4, 4), (0, 2, 2, 4), (1, 0, 2, 2), (0, 1, 1, 2) } : [(0, 0, 1, 1)])
        {
            int columns = (width - x + right - 1) / right, rows = (height - y + down - 1) / down;
            for (var r = 0; columns > 0 && r < rows; r++)
            {
                raw.WriteByte((byte)chance.Below(5));
                for (var b = 0; b < (columns * bits * samples + 7) / 8; b++) raw.WriteByte((byte)chance.Below(256));
            }
        }
        using var packed = new MemoryStream();
        using (var zip = new ZLibStream(packed, CompressionLevel.Fastest, true)) zip.Write(raw.ToArray());
        var head = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, width);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), height);
        (head[8], head[9], head[12]) = (bits, colour, (byte)(interlaced ? 1 : 0));
        byte[] palette = colour == 3 ? PngPart.Make("PLTE"u8, [.. Enumerable.Range(0, 3 << bits).Select(_ => (byte)chance.Below(256))]) : [];
        var data = packed.ToArray();
        return [.. PngPart.Signature, .. PngPart.Make("IHDR"u8, head), .. palette, .. PngPart.Make("IDAT"u8, data.AsSpan(0, data.Length / 2)), .. PngPart.Make("IDAT"u8, data.AsSpan(data.Length / 2)), .. PngPart.Make("IEND"u8, [])];
    }

    public static TheoryData<byte, byte, bool> Kinds
    {
        get
        {
            var all = new TheoryData<byte, byte, bool>();
            foreach (var (colour, bits) in new (byte, byte[])[] { (0, [1, 2, 4, 8, 16]), (2, [8, 16]), (3, [1, 2, 4, 8]), (4, [8, 16]), (6, [8, 16]) })
                foreach (var b in bits)
                {
                    all.Add(b, colour, false);
                    all.Add(b, colour, true);
                }
            return all;
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    [Truth(Grade.SecondImplementation, "StbImageSharp 2.30.16 on random PNGs of every colour type, bit depth and interlace; see-through laid on white here")]
    public void Every_kind_of_png_is_read_as_another_reader_reads_it(byte bits, byte colour, bool interlaced)
    {
        var file = RandomPng(29, 19, bits, colour, interlaced, seed: 7UL + bits + 31UL * colour);
        var read = PictureFile.Read(file).Value.Raster;
        var other = ImageResult.FromMemory(file, ColorComponents.RedGreenBlueAlpha);
        for (var p = 0; p < 29 * 19; p++)
            for (var c = 0; c < 3; c++)
            {
                var (value, cover) = (other.Data[p * 4 + c], other.Data[p * 4 + 3]);
                Assert.InRange(read.Pixels[p * read.Channels + (read.Channels == 3 ? c : 0)] - (255 + (value - 255) * cover / 255.0), -1, 1);
            }
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "StbImageSharp 2.30.16 decodes the same JPEG; the inverse transforms may round otherwise by 1")]
    public void A_jpeg_is_read_as_another_reader_reads_it()
    {
        var file = JpegMaker.Write(new Shot(250, 333, 330, 0.2, 27, 0, DrawingOffice.Photo.Targets.Target.A4).Take(3), 88);
        var read = PictureFile.Read(file).Value.Raster;
        var other = ImageResult.FromMemory(file, ColorComponents.Grey);
        Assert.Equal((other.Width, other.Height, 1), (read.Width, read.Height, read.Channels));
        for (var i = 0; i < read.Pixels.Length; i++) Assert.InRange(read.Pixels[i] - other.Data[i], -1, 1);
    }

    [Fact]
    [Truth(Grade.Property, "what is written is read back bit for bit, grey and colour")]
    public void A_png_is_read_back_as_it_was_written()
    {
        var chance = new Chance(3);
        foreach (var channels in new[] { 1, 3 })
        {
            var raster = new Raster(37, 23, channels, [.. Enumerable.Range(0, 37 * 23 * channels).Select(_ => (byte)chance.Below(256))]);
            Assert.Equal(raster.Pixels, PictureFile.Read(PictureFile.Png(raster, 10)).Value.Raster.Pixels);
        }
    }

    [Theory]
    [InlineData(1, "abcd"), InlineData(2, "badc"), InlineData(3, "dcba"), InlineData(4, "cdab"), InlineData(5, "acbd"), InlineData(6, "cadb"), InlineData(7, "dbca"), InlineData(8, "bdac")]
    [Truth(Grade.Published, "Exif 2.3, tag 0x0112: 1 row 0 top, column 0 left; 2 top, right; 3 bottom, right; 4 bottom, left; 5 left, top; 6 right, top; 7 right, bottom; 8 left, bottom")]
    public void A_picture_is_set_upright(int turn, string corners)
    {
        // Stored: a b above c d, each a block, so that nothing depends on one pixel.
        var stored = new Raster(4, 2, 1, [.. "aabbccdd"u8]);
        var up = Upright.Of(stored, turn);
        Assert.Equal(turn >= 5 ? (2, 4) : (4, 2), (up.Width, up.Height));
        string Corner(int x, int y) => $"{(char)up.Pixels[y * up.Width + x]}";
        Assert.Equal(corners, Corner(0, 0) + Corner(up.Width - 1, 0) + Corner(0, up.Height - 1) + Corner(up.Width - 1, up.Height - 1));
    }

    static byte[] HeadOnly(int width, int height)
    {
        var file = PictureFile.Png(new(1, 1, 1, [0]), 1);
        BinaryPrimitives.WriteInt32BigEndian(file.AsSpan(16), width);
        BinaryPrimitives.WriteInt32BigEndian(file.AsSpan(20), height);
        return file;
    }

    [Fact]
    [Truth(Grade.Property, "each bad file is refused in one sentence that says what would be right, before any pixel is made")]
    public void What_is_no_picture_is_refused_in_words()
    {
        var jpeg = JpegMaker.Write(new(64, 64, 1, new byte[64 * 64]));
        (byte[] File, string Words)[] bad =
        [
            ([], "nothing is given"),
            ("sample,H1"u8.ToArray(), "send a JPEG, PNG or WebP"),
            ([0, 0, 0, 24, .. "ftypheic"u8, .. new byte[12]], "choose JPEG"),
            (jpeg[..^40], "ends before the picture does"),
            (jpeg[..20], "ends before the picture does"),
            (PictureFile.Png(new(9, 9, 1, new byte[81]), 1)[..^20], "ends before the picture does"),
            (HeadOnly(0, 10), "at least one pixel"),
            (HeadOnly(50_000, 50_000), "at most 40 million pixels"),
            (HeadOnly(30, 30), "damaged or cut short"),
            ([.. "RIFF"u8, 200, 0, 0, 0, .. "WEBP"u8, .. new byte[8]], "ends before the picture does"),
        ];
        foreach (var (file, words) in bad) Assert.Contains(words, PictureFile.Read(file).Refusal!.Sentence);
        var large = new byte[PictureHead.LargestFile + 1];
        jpeg.CopyTo(large, 0);
        Assert.Contains("at most 100 MB", PictureFile.Read(large).Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "a file spoilt at any place is read or refused and never brings the program down")]
    public void A_spoilt_file_never_brings_the_program_down()
    {
        byte[][] whole =
        [
            JpegMaker.Write(new(40, 40, 1, [.. Enumerable.Range(0, 1600).Select(i => (byte)i)]), 90, JpegMaker.Notes(6, 26)),
            RandomPng(20, 20, 8, 3, true, 5),
        ];
        var (chance, refused) = (new Chance(11), 0);
        for (var n = 0; n < 600; n++)
        {
            var file = whole[n % 2].ToArray();
            for (var k = chance.Below(4); k >= 0; k--) file[chance.Below(file.Length)] = (byte)chance.Below(256);
            if (PictureFile.Read(file).Refusal is not null) refused++;
            else Assert.NotEmpty(PictureStrip.Of(file));
        }
        Assert.InRange(refused, 50, 599);
    }
}
