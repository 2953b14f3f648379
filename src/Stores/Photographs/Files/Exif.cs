using System.Buffers.Binary;
using System.Text;

namespace WitnessMark.Stores.Photographs.Files;

/// <summary>
/// What is wanted of a camera's notes (TIFF 6.0 directory, Exif 2.3 tags): how the picture is turned, how long the lens was and when it was taken.
/// Broken notes say nothing and are no reason to refuse the picture.
/// </summary>
/// <param name="Turn">1 to 8 as tag 0x0112 counts; 1 is upright.</param>
/// <param name="Focal35">Focal length that would show as much on 36 × 24 mm film, mm (tag 0xA405); null where it is not told.</param>
/// <param name="Taken">Tags 0x9003 and 0x9011; null where it is not told.</param>
public readonly record struct Exif(int Turn, double? Focal35, CameraTime? Taken = null)
{
    public const int Upright = 1;

    const ushort TurnTag = 0x0112, PhotoDirectory = 0x8769, Focal35Tag = 0xA405, TakenTag = 0x9003, OffsetTag = 0x9011;
    const ushort TextType = 2, ShortType = 3, LongType = 4;
    const int EntrySize = 12;

    /// <summary>A camera writes some dozens; more is no directory.</summary>
    const int MostEntries = 1000;

    /// <summary>A time and its offset are far shorter.</summary>
    const int LongestText = 64;

    public static Exif None => new(Upright, null);

    /// <param name="tiff">From the byte-order mark on.</param>
    public static Exif Read(ReadOnlySpan<byte> tiff)
    {
        if (tiff.Length < 8 || !(tiff.StartsWith("II*\0"u8) || tiff.StartsWith("MM\0*"u8))) return None;
        var notes = new Notes(tiff, tiff[0] == 'I');
        var first = notes.Long(4);
        var turn = notes.Find(first, TurnTag) is >= 1 and <= 8 and var t ? (int)t : Upright;
        if (notes.Find(first, PhotoDirectory) is not { } photo) return new(turn, null);
        var focal = notes.Find(photo, Focal35Tag);
        return new(turn, focal is >= 1 and <= 2000 ? focal : null, CameraTime.Read(notes.Text(photo, TakenTag), notes.Text(photo, OffsetTag)));
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

        public uint? Find(uint? directory, ushort tag) => Entry(directory, tag) is not { } entry ? null
            : Count(entry + 2) switch { ShortType => Count(entry + 8), LongType => Long(entry + 8), _ => null };

        /// <summary>Without the zero that ends it; empty where there is none.</summary>
        public string Text(uint directory, ushort tag)
        {
            if (Entry(directory, tag) is not { } entry || Count(entry + 2) != TextType || Long(entry + 4) is not (>= 1 and <= LongestText and var length)) return "";
            var at = length <= 4 ? entry + 8 : Long(entry + 8);
            return at is { } from && Holds(from, length) ? Encoding.Latin1.GetString(_tiff.Slice((int)from, (int)length - 1)) : "";
        }

        uint? Entry(uint? directory, ushort tag)
        {
            if (directory is not { } at || Count(at) is not { } count || count > MostEntries) return null;
            for (var i = 0; i < count; i++)
                if (at + 2 + (uint)(i * EntrySize) is var entry && Count(entry) == tag) return entry;
            return null;
        }

        public uint? Long(uint at) => !Holds(at, 4) ? null
            : lowFirst ? BinaryPrimitives.ReadUInt32LittleEndian(_tiff[(int)at..]) : BinaryPrimitives.ReadUInt32BigEndian(_tiff[(int)at..]);

        ushort? Count(uint at) => !Holds(at, 2) ? null
            : lowFirst ? BinaryPrimitives.ReadUInt16LittleEndian(_tiff[(int)at..]) : BinaryPrimitives.ReadUInt16BigEndian(_tiff[(int)at..]);

        bool Holds(uint at, uint bytes) => at <= (uint)_tiff.Length && (uint)_tiff.Length - at >= bytes;
    }
}
