using System.Buffers.Binary;

namespace WitnessMark.Stores.Photographs.Files;

/// <summary>
/// A picture fit to leave the house: pixels, colours and which way up it stands, and nothing else. Where and when it was taken, the
/// camera's serial number, thumbnails, comments and whatever stands behind the picture's end are gone. Only parts that are known to be
/// harmless are copied, so that what nobody has thought of cannot slip through. The pixels stay bit for bit as they were.
/// </summary>
public static class PictureStrip
{
    /// <summary>Media type as in <c>image/jpeg</c> is unchanged; the original is left alone.</summary>
    /// <exception cref="Maths.RefusedException">Not a whole picture; see <see cref="PictureHead.Read"/>.</exception>
    public static byte[] Of(ReadOnlySpan<byte> file)
    {
        var head = PictureHead.Read(file).Value;
        return head.Format switch
        {
            PictureFormat.Jpeg => Jpeg(file, head.Turn),
            PictureFormat.Png => Png(file, head.Turn),
            _ => WebP(file, head.Turn),
        };
    }

    /// <summary>Application parts stay only where they tell colours: APP0 JFIF, APP2 ICC profile, APP14 Adobe.</summary>
    static byte[] Jpeg(ReadOnlySpan<byte> file, int turn)
    {
        using var to = new MemoryStream(file.Length);
        foreach (var part in JpegPart.Of(file))
        {
            var body = part.Body(file);
            if (part.Marker == 0xE0 && body.StartsWith("JFIF\0"u8)) Segment(to, 0xE0, WithoutThumbnail(body));
            else if (part.Marker is < 0xE0 or 0xEE && (part.Marker != 0xEE || body.StartsWith("Adobe"u8)) || part.Marker == 0xE2 && body.StartsWith("ICC_PROFILE\0"u8))
                to.Write(file[part.Start..part.End]);
            if (part.Marker == JpegPart.Begin && turn != Exif.Upright) Segment(to, 0xE1, [.. PictureHead.JpegNotes, .. Exif.OnlyTurn(turn)]);
        }
        return to.ToArray();
    }

    /// <summary>JFIF ends with the width and height of a small picture and its pixels.</summary>
    static byte[] WithoutThumbnail(ReadOnlySpan<byte> jfif) => jfif.Length < 14 ? jfif.ToArray() : [.. jfif[..12], 0, 0];

    static void Segment(MemoryStream to, byte marker, ReadOnlySpan<byte> body)
    {
        Span<byte> head = [0xFF, marker, 0, 0];
        BinaryPrimitives.WriteUInt16BigEndian(head[2..], (ushort)(body.Length + 2));
        to.Write(head);
        to.Write(body);
    }

    static readonly HashSet<string> HarmlessInPng = ["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "iCCP", "sBIT", "pHYs", "bKGD", "cICP"];

    static byte[] Png(ReadOnlySpan<byte> file, int turn)
    {
        using var to = new MemoryStream(file.Length);
        to.Write(PngPart.Signature);
        foreach (var part in PngPart.Of(file))
        {
            if (HarmlessInPng.Contains(part.Name)) to.Write(file[part.Start..part.End]);
            if (part.Name == "IHDR" && turn != Exif.Upright) to.Write(PngPart.Make("eXIf"u8, Exif.OnlyTurn(turn)));
        }
        return to.ToArray();
    }

    static readonly HashSet<string> HarmlessInWebP = ["VP8X", "VP8 ", "VP8L", "ALPH", "ICCP", "ANIM", "ANMF"];

    static byte[] WebP(ReadOnlySpan<byte> file, int turn)
    {
        using var to = new MemoryStream(file.Length);
        to.Write(file[..WebPPart.HeadSize]);
        var turned = false;
        foreach (var part in WebPPart.Of(file)!.Where(p => HarmlessInWebP.Contains(p.Name)))
        {
            var bytes = file[part.Start..Math.Min(part.End, file.Length)].ToArray();
            if (part.Name == "VP8X")
            {
                turned = turn != Exif.Upright;
                bytes[8] = (byte)(bytes[8] & ~(WebPPart.HasExif | WebPPart.HasXmp) | (turned ? WebPPart.HasExif : 0));
            }
            to.Write(bytes);
        }
        if (turned)
        {
            var notes = Exif.OnlyTurn(turn);
            to.Write([.. "EXIF"u8, (byte)notes.Length, 0, 0, 0, .. notes]);
        }
        var stripped = to.ToArray();
        BinaryPrimitives.WriteUInt32LittleEndian(stripped.AsSpan(4), (uint)(stripped.Length - 8));
        return stripped;
    }
}
