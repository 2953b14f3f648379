using System.Buffers.Binary;
using WitnessMark.Maths;
using WitnessMark.Stores.Keeping;

namespace WitnessMark.Stores.Photographs.Files;

public enum PictureFormat { Jpeg, Png, WebP }

/// <summary>What a picture file says of itself before any pixel is made of it.</summary>
/// <param name="Width">As stored, px; turned upright it may be the height.</param>
/// <param name="Turn">How it must be turned to stand upright, 1 to 8 as Exif counts; 1 is upright.</param>
/// <param name="Focal35">Focal length that would show as much on 36 × 24 mm film, mm; null where the camera does not tell.</param>
public sealed record PictureHead(PictureFormat Format, int Width, int Height, int Turn, double? Focal35)
{
    /// <summary>Bytes.</summary>
    public const int LargestFile = 100_000_000;

    /// <summary>Pixels: the largest that a phone or camera takes at its full size, with room; a picture past it gains nothing and fills the memory.</summary>
    public const long MostPixels = 60_000_000;

    const string Field = "picture";

    /// <summary>Turned upright, width and height change places.</summary>
    public bool Lies => Turn >= 5;

    /// <summary>Refused: no picture, one of another kind (HEIC with what to do), cut short, of no size, over 100 MB or of too many pixels.</summary>
    /// <param name="most">Pixels.</param>
    public static Parsed<PictureHead> Read(ReadOnlySpan<byte> file, long most = MostPixels)
    {
        if (file.Length > LargestFile)
            return Refusal.Of(Field, $"{file.Length / 1e6:0} MB", $"at most {LargestFile / 1_000_000} MB are read; take it at a smaller size");
        var kind = PictureKind.MediaType(file);
        if (kind.Refusal is { } other) return other;
        var head = kind.Value switch { "image/jpeg" => Jpeg(file), "image/png" => Png(file), _ => WebP(file) };
        if (head is null) return Refusal.Of(Field, $"{file.Length / 1000} kB", "the file ends before the picture does; copy it from the phone or camera again");
        if (head.Width < 1 || head.Height < 1) return Refusal.Of(Field, $"{head.Width} by {head.Height} px", "a picture has at least one pixel each way");
        if ((long)head.Width * head.Height > most)
            return Refusal.Of(Field, $"{head.Width} by {head.Height} px", $"at most {most / 1_000_000} million pixels are read; take it at a smaller size");
        return head;
    }

    /// <summary>When the camera says the picture was taken, from the first part of a JPEG; null where it does not tell.</summary>
    public static CameraTime? Taken(ReadOnlySpan<byte> beginning)
    {
        foreach (var part in JpegPart.Of(beginning))
            if (part.Marker == 0xE1 && part.Body(beginning) is var body && body.StartsWith(JpegNotes)) return Exif.Read(body[JpegNotes.Length..]).Taken;
        return null;
    }

    static PictureHead? Jpeg(ReadOnlySpan<byte> file)
    {
        var parts = JpegPart.Of(file);
        if (parts.Count == 0 || parts[^1].Marker != JpegPart.Finish || !parts.Any(p => p.Marker == JpegPart.Scan)) return null;
        var exif = Exif.None;
        (int Width, int Height)? size = null;
        foreach (var part in parts)
        {
            var body = part.Body(file);
            if (part.IsFrame && body.Length >= 5) size ??= (BinaryPrimitives.ReadUInt16BigEndian(body[3..]), BinaryPrimitives.ReadUInt16BigEndian(body[1..]));
            else if (part.Marker == 0xE1 && body.StartsWith(JpegNotes)) exif = Exif.Read(body[JpegNotes.Length..]);
        }
        return size is var (width, height) ? new(PictureFormat.Jpeg, width, height, exif.Turn, exif.Focal35) : null;
    }

    /// <summary>How the camera's notes begin in an APP1 segment.</summary>
    internal static ReadOnlySpan<byte> JpegNotes => "Exif\0\0"u8;

    static PictureHead? Png(ReadOnlySpan<byte> file)
    {
        var parts = PngPart.Of(file);
        if (parts is not [{ Name: "IHDR", Length: 13 } first, .., { Name: "IEND" }]) return null;
        var exif = parts.FirstOrDefault(p => p.Name == "eXIf") is { Length: > 0 } notes ? Exif.Read(notes.Body(file)) : Exif.None;
        var (width, height) = (BinaryPrimitives.ReadUInt32BigEndian(first.Body(file)), BinaryPrimitives.ReadUInt32BigEndian(first.Body(file)[4..]));
        return new(PictureFormat.Png, (int)Math.Min(width, int.MaxValue), (int)Math.Min(height, int.MaxValue), exif.Turn, exif.Focal35);
    }

    static PictureHead? WebP(ReadOnlySpan<byte> file)
    {
        if (WebPPart.Of(file) is not [var first, ..] parts || first.Size(file) is not var (width, height)) return null;
        var exif = parts.FirstOrDefault(p => p.Name == "EXIF") is { Length: > 0 } notes ? NotesOf(notes.Body(file)) : Exif.None;
        return new(PictureFormat.WebP, width, height, exif.Turn, exif.Focal35);
    }

    /// <summary>Some writers carry the JPEG's beginning over.</summary>
    static Exif NotesOf(ReadOnlySpan<byte> body) => Exif.Read(body.StartsWith(JpegNotes) ? body[JpegNotes.Length..] : body);
}
