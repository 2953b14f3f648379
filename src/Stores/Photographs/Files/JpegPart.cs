using System.Buffers.Binary;

namespace WitnessMark.Stores.Photographs.Files;

/// <summary>One marker segment of a JPEG (ISO/IEC 10918-1, annex B).</summary>
/// <param name="Marker">Second byte of the marker.</param>
/// <param name="Start">Of the marker's 0xFF, bytes.</param>
/// <param name="End">Past the segment; past the coded picture too where it is a scan.</param>
public readonly record struct JpegPart(byte Marker, int Start, int End)
{
    public const byte Begin = 0xD8, Finish = 0xD9, Scan = 0xDA;

    /// <summary>Frame headers: 0xC0 to 0xCF without the tables (C4, CC) and the one set aside (C8).</summary>
    public bool IsFrame => Marker is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC);

    /// <summary>What stands behind the marker and its length.</summary>
    public ReadOnlySpan<byte> Body(ReadOnlySpan<byte> file) => End - Start > 4 ? file[(Start + 4)..End] : [];

    /// <summary>All of them up to the end mark, which is missing where the file was cut short.</summary>
    public static List<JpegPart> Of(ReadOnlySpan<byte> file)
    {
        var parts = new List<JpegPart>();
        for (var at = 0; at + 1 < file.Length && file[at] == 0xFF;)
        {
            // A marker may be preceded by fill bytes.
            if (file[at + 1] == 0xFF)
            {
                at++;
                continue;
            }
            var marker = file[at + 1];
            var end = marker is Begin or Finish or 1 ? at + 2 : EndOf(file, at);
            if (end > file.Length) break;
            if (marker == Scan) end = EndOfScan(file, end);
            parts.Add(new(marker, at, end));
            if (marker == Finish) break;
            at = end;
        }
        return parts;
    }

    static int EndOf(ReadOnlySpan<byte> file, int at) =>
        at + 4 <= file.Length && BinaryPrimitives.ReadUInt16BigEndian(file[(at + 2)..]) is >= 2 and var length ? at + 2 + length : int.MaxValue;

    /// <summary>Coded data end at a marker that is neither a stuffed zero nor a restart.</summary>
    static int EndOfScan(ReadOnlySpan<byte> file, int at)
    {
        while (at < file.Length)
        {
            var step = file[at..].IndexOf((byte)0xFF);
            if (step < 0 || at + step + 1 >= file.Length) return file.Length;
            at += step;
            if (file[at + 1] is 0 or (>= 0xD0 and <= 0xD7)) at += 2;
            else if (file[at + 1] == 0xFF) at++;
            else return at;
        }
        return file.Length;
    }
}
