using System.Buffers.Binary;
using System.Text;

namespace WitnessMark.Stores.Photographs.Files;

/// <summary>One chunk of a PNG (ISO/IEC 15948, 5.3).</summary>
/// <param name="Start">Of its length field, bytes.</param>
/// <param name="Length">Of its data, bytes.</param>
public readonly record struct PngPart(string Name, int Start, int Length)
{
    /// <summary>Bytes of the length, the name and the check sum.</summary>
    const int Around = 12;

    public const int SignatureSize = 8;

    public static ReadOnlySpan<byte> Signature => [0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A];

    public int End => Start + Around + Length;

    public ReadOnlySpan<byte> Body(ReadOnlySpan<byte> file) => file.Slice(Start + 8, Length);

    /// <summary>All of them up to IEND, which is missing where the file was cut short.</summary>
    public static List<PngPart> Of(ReadOnlySpan<byte> file)
    {
        var parts = new List<PngPart>();
        for (var at = SignatureSize; at + Around <= file.Length;)
        {
            var length = BinaryPrimitives.ReadUInt32BigEndian(file[at..]);
            if (length > file.Length - at - Around) break;
            parts.Add(new(Encoding.Latin1.GetString(file.Slice(at + 4, 4)), at, (int)length));
            if (parts[^1].Name == "IEND") break;
            at = parts[^1].End;
        }
        return parts;
    }

    /// <summary>A whole chunk with its check sum.</summary>
    public static byte[] Make(ReadOnlySpan<byte> name, ReadOnlySpan<byte> body)
    {
        var chunk = new byte[Around + body.Length];
        BinaryPrimitives.WriteInt32BigEndian(chunk, body.Length);
        name.CopyTo(chunk.AsSpan(4));
        body.CopyTo(chunk.AsSpan(8));
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(8 + body.Length), Sum(chunk.AsSpan(4, 4 + body.Length)));
        return chunk;
    }

    /// <summary>CRC-32 of ISO/IEC 15948, annex D: polynomial 0xEDB88320, reflected.</summary>
    static uint Sum(ReadOnlySpan<byte> bytes)
    {
        var sum = uint.MaxValue;
        foreach (var b in bytes) sum = Table[(sum ^ b) & 0xFF] ^ (sum >> 8);
        return ~sum;
    }

    static readonly uint[] Table = [.. Enumerable.Range(0, 256).Select(n =>
    {
        var c = (uint)n;
        for (var k = 0; k < 8; k++) c = (c & 1) != 0 ? 0xEDB88320 ^ (c >> 1) : c >> 1;
        return c;
    })];
}
