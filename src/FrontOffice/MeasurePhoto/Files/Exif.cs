using System.Buffers.Binary;

namespace WitnessMark.FrontOffice.MeasurePhoto.Files;

/// <summary>
/// The two things wanted of a camera's notes (TIFF 6.0 directory, Exif 2.3 tags): how the picture is turned and how long the lens was.
/// Broken notes say nothing and are no reason to refuse the picture.
/// </summary>
/// <param name="Turn">1 to 8 as tag 0x0112 counts; 1 is upright.</param>
/// <param name="Focal35">Focal length that would show as much on 36 × 24 mm film, mm (tag 0xA405); null where it is not told.</param>
readonly record struct Exif(int Turn, double? Focal35)
{
    public const int Upright = 1;

    const ushort TurnTag = 0x0112, PhotoDirectory = 0x8769, Focal35Tag = 0xA405;
    const ushort ShortType = 3, LongType = 4;
    const int EntrySize = 12;

    /// <summary>A camera writes some dozens; more is no directory.</summary>
    const int MostEntries = 1000;

    public static Exif None => new(Upright, null);

    /// <param name="tiff">From the byte-order mark on.</param>
    public static Exif Read(ReadOnlySpan<byte> tiff)
    {
        if (tiff.Length < 8 || !(tiff.StartsWith("II*\0"u8) || tiff.StartsWith("MM\0*"u8))) return None;
        var notes = new Notes(tiff, tiff[0] == 'I');
        var first = notes.Long(4);
        var turn = notes.Find(first, TurnTag) is >= 1 and <= 8 and var t ? (int)t : Upright;
        var focal = notes.Find(first, PhotoDirectory) is { } photo ? notes.Find(photo, Focal35Tag) : null;
        return new(turn, focal is >= 1 and <= 2000 ? focal : null);
    }

    /// <summary>Notes that say how the picture is turned and nothing else.</summary>
    public static byte[] OnlyTurn(int turn) =>
    [
        .. "MM\0*"u8, 0, 0, 0, 8,
        0, 1,
        TurnTag >> 8, TurnTag & 0xFF, 0, (byte)ShortType, 0, 0, 0, 1, 0, (byte)turn, 0, 0,
        0, 0, 0, 0,
    ];

    readonly ref struct Notes(ReadOnlySpan<byte> tiff, bool lowFirst)
    {
        readonly ReadOnlySpan<byte> _tiff = tiff;

        public uint? Find(uint? directory, ushort tag)
        {
            if (directory is not { } at || Count(at) is not { } count || count > MostEntries) return null;
            for (var i = 0; i < count; i++)
            {
                var entry = at + 2 + (uint)(i * EntrySize);
                if (Count(entry) != tag) continue;
                return Count(entry + 2) switch { ShortType => Count(entry + 8), LongType => Long(entry + 8), _ => null };
            }
            return null;
        }

        public uint? Long(uint at) => !Holds(at, 4) ? null
            : lowFirst ? BinaryPrimitives.ReadUInt32LittleEndian(_tiff[(int)at..]) : BinaryPrimitives.ReadUInt32BigEndian(_tiff[(int)at..]);

        ushort? Count(uint at) => !Holds(at, 2) ? null
            : lowFirst ? BinaryPrimitives.ReadUInt16LittleEndian(_tiff[(int)at..]) : BinaryPrimitives.ReadUInt16BigEndian(_tiff[(int)at..]);

        bool Holds(uint at, uint bytes) => at <= (uint)_tiff.Length && (uint)_tiff.Length - at >= bytes;
    }
}
