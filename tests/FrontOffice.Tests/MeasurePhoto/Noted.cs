using System.Buffers.Binary;
using System.Text;

namespace WitnessMark.Tests.FrontOffice.MeasurePhoto;

/// <summary>What a careless phone writes into a picture: where it was taken, its serial number, whose it is. All invented.</summary>
static class Noted
{
    public const string Serial = "SN-QB-553-0417", Owner = "Quillbeck Shed", Place = "51.4778N";

    /// <summary>As rationals stand in the file: 51/1, 28/1, 4012/100.</summary>
    public static byte[] Latitude => [0, 0, 0, 51, 0, 0, 0, 1, 0, 0, 0, 28, 0, 0, 0, 1, 0, 0, 0x0F, 0xAC, 0, 0, 0, 100];

    /// <summary>Everything that must not be found afterwards.</summary>
    public static IEnumerable<byte[]> Secrets => [.. new[] { Serial, Owner, Place }.Select(Encoding.ASCII.GetBytes), Latitude];

    /// <summary>TIFF notes, high byte first: turn, owner, photo directory with focal length and serial number, GPS directory with latitude.</summary>
    public static byte[] Tiff(int turn, int focal35)
    {
        const int main = 8, entries = 4, photo = main + 2 + entries * 12 + 4, gps = photo + 2 + 2 * 12 + 4, data = gps + 2 + 2 * 12 + 4;
        var owner = Encoding.ASCII.GetBytes(Owner + "\0");
        var serial = Encoding.ASCII.GetBytes(Serial + "\0");
        var (ownerAt, serialAt) = (data, data + owner.Length);
        var latitudeAt = serialAt + serial.Length;
        using var tiff = new MemoryStream();
        tiff.Write("MM\0*"u8);
        U32(tiff, main);
        U16(tiff, entries);
        Entry(tiff, 0x0112, 3, 1, (uint)turn << 16);
        Entry(tiff, 0x013B, 2, (uint)owner.Length, (uint)ownerAt);
        Entry(tiff, 0x8769, 4, 1, photo);
        Entry(tiff, 0x8825, 4, 1, gps);
        U32(tiff, 0);
        U16(tiff, 2);
        Entry(tiff, 0xA405, 3, 1, (uint)focal35 << 16);
        Entry(tiff, 0xA431, 2, (uint)serial.Length, (uint)serialAt);
        U32(tiff, 0);
        U16(tiff, 2);
        Entry(tiff, 0x0001, 2, 2, (uint)'N' << 24);
        Entry(tiff, 0x0002, 5, 3, (uint)latitudeAt);
        U32(tiff, 0);
        tiff.Write(owner);
        tiff.Write(serial);
        tiff.Write(Latitude);
        return tiff.ToArray();
    }

    public static byte[] Xmp => Encoding.ASCII.GetBytes($"http://ns.adobe.com/xap/1.0/\0<x:xmpmeta><place>{Place}</place><by>{Owner}</by></x:xmpmeta>");

    static void Entry(MemoryStream to, ushort tag, ushort type, uint count, uint value)
    {
        U16(to, tag);
        U16(to, type);
        U32(to, count);
        U32(to, value);
    }

    static void U16(MemoryStream to, ushort value)
    {
        Span<byte> two = stackalloc byte[2];
        BinaryPrimitives.WriteUInt16BigEndian(two, value);
        to.Write(two);
    }

    static void U32(MemoryStream to, uint value)
    {
        Span<byte> four = stackalloc byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(four, value);
        to.Write(four);
    }
}
