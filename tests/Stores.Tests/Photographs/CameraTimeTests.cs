using System.Buffers.Binary;
using WitnessMark.Stores.Photographs.Files;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Photographs;

public class CameraTimeTests
{
    static readonly DateTimeOffset Now = new(2031, 5, 30, 12, 0, 0, TimeSpan.FromHours(2));

    [Fact]
    [Truth(Grade.Published, "Exif 2.31, 4.6.5 DateTimeOriginal \"YYYY:MM:DD HH:MM:SS\" and 4.6.6 OffsetTimeOriginal \"+HH:MM\"")]
    public void The_cameras_time_is_read_from_the_beginning_of_a_file()
    {
        var taken = PictureHead.Taken(Beginning("2031:05:28 10:15:00", "-05:30"));
        Assert.Equal(new DateTimeOffset(2031, 5, 28, 10, 15, 0, TimeSpan.FromHours(-5.5)), taken!.Value.Sane(Now));
        Assert.Equal(Now.Offset, PictureHead.Taken(Beginning("2031:05:28 10:15:00", ""))!.Value.Sane(Now)!.Value.Offset);
    }

    [Theory]
    [InlineData("1970:01:01 00:00:00"), InlineData("2044:01:01 00:00:00"), InlineData("0000:00:00 00:00:00"), InlineData("yesterday")]
    [Truth(Grade.Property, "a clock that is plainly wrong does not count")]
    public void A_wrong_clock_does_not_count(string time) => Assert.Null(PictureHead.Taken(Beginning(time, ""))?.Sane(Now));

    [Fact]
    [Truth(Grade.Property, "a file cut anywhere, or spoilt, tells a time or none and never brings the program down")]
    public void A_cut_file_says_nothing()
    {
        var whole = Beginning("2031:05:28 10:15:00", "+01:00");
        for (var n = 0; n < whole.Length; n++) PictureHead.Taken(whole.AsSpan(0, n));
        for (var n = 2; n < whole.Length; n++)
        {
            var spoilt = whole.ToArray();
            spoilt[n] ^= 0xFF;
            PictureHead.Taken(spoilt);
        }
    }

    /// <summary>The first segments of a JPEG: TIFF notes, low byte first, with a photo directory of two texts.</summary>
    static byte[] Beginning(string time, string offset)
    {
        var (first, second) = (System.Text.Encoding.ASCII.GetBytes(time + "\0"), System.Text.Encoding.ASCII.GetBytes(offset + "\0"));
        const int photo = 8 + 2 + 12 + 4, data = photo + 2 + 24 + 4;
        byte[] tiff =
        [
            .. "II*\0"u8, 8, 0, 0, 0, 1, 0, .. Entry(0x8769, 4, 1, photo), 0, 0, 0, 0,
            2, 0, .. Entry(0x9003, 2, first.Length, data), .. Entry(0x9011, 2, second.Length, second.Length <= 4 ? 0 : data + first.Length), 0, 0, 0, 0, .. first, .. second,
        ];
        return [0xFF, 0xD8, 0xFF, 0xE1, 0, (byte)(tiff.Length + 8), .. "Exif\0\0"u8, .. tiff, 0xFF, 0xDB, 0, 4, 0, 0];
    }

    static byte[] Entry(ushort tag, ushort type, int count, int value)
    {
        var entry = new byte[12];
        BinaryPrimitives.WriteUInt16LittleEndian(entry, tag);
        BinaryPrimitives.WriteUInt16LittleEndian(entry.AsSpan(2), type);
        BinaryPrimitives.WriteInt32LittleEndian(entry.AsSpan(4), count);
        BinaryPrimitives.WriteInt32LittleEndian(entry.AsSpan(8), value);
        return entry;
    }
}
