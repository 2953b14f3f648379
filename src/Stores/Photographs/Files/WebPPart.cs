using System.Buffers.Binary;
using System.Text;

namespace WitnessMark.Stores.Photographs.Files;

/// <summary>One chunk of a WebP (RFC 9649, 2.3).</summary>
/// <param name="Start">Of its name, bytes.</param>
/// <param name="Length">Of its data without the byte that fills an odd length.</param>
public readonly record struct WebPPart(string Name, int Start, int Length)
{
    public const int HeadSize = 12;

    /// <summary>Flags of VP8X: camera notes and XMP are there.</summary>
    public const byte HasExif = 0x08, HasXmp = 0x04;

    public int End => Start + 8 + Length + (Length & 1);

    public ReadOnlySpan<byte> Body(ReadOnlySpan<byte> file) => file.Slice(Start + 8, Length);

    /// <summary>Null where the file was cut short.</summary>
    public static List<WebPPart>? Of(ReadOnlySpan<byte> file)
    {
        var parts = new List<WebPPart>();
        var told = BinaryPrimitives.ReadUInt32LittleEndian(file[4..]) + 8L;
        if (told > file.Length) return null;
        for (var at = HeadSize; at + 8 <= told;)
        {
            var length = BinaryPrimitives.ReadUInt32LittleEndian(file[(at + 4)..]);
            if (length > told - at - 8) return null;
            parts.Add(new(Encoding.Latin1.GetString(file.Slice(at, 4)), at, (int)length));
            at = parts[^1].End;
        }
        return parts;
    }

    /// <summary>Width and height in px: VP8X holds them less one in 24 bits; VP8 and VP8L as RFC 6386, 9.1 and RFC 9649, 3.4 lay them out.</summary>
    public (int Width, int Height)? Size(ReadOnlySpan<byte> file)
    {
        var body = Body(file);
        return Name switch
        {
            "VP8X" when body.Length >= 10 => (1 + Three(body[4..]), 1 + Three(body[7..])),
            "VP8 " when body.Length >= 10 => (BinaryPrimitives.ReadUInt16LittleEndian(body[6..]) & 0x3FFF, BinaryPrimitives.ReadUInt16LittleEndian(body[8..]) & 0x3FFF),
            "VP8L" when body.Length >= 5 => BinaryPrimitives.ReadUInt32LittleEndian(body[1..]) is var bits ? ((int)(bits & 0x3FFF) + 1, (int)(bits >> 14 & 0x3FFF) + 1) : null,
            _ => null,
        };
    }

    static int Three(ReadOnlySpan<byte> b) => b[0] | b[1] << 8 | b[2] << 16;
}
