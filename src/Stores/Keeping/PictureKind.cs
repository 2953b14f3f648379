using System.Security.Cryptography;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Keeping;

/// <summary>Which pictures are kept, told by their first bytes and not by their name.</summary>
public static class PictureKind
{
    /// <summary>Bytes: a JPEG of the largest phones and cameras, with room.</summary>
    public const int Largest = 40_000_000;

    const string Wanted = "send a JPEG, PNG or WebP picture";

    /// <summary>
    /// The media type. JPEG begins FF D8 FF (ISO/IEC 10918-1: SOI and the next marker), PNG with its eight-byte signature
    /// (ISO/IEC 15948, 5.2), WebP with RIFF, four bytes of length and WEBP (RFC 9649, 2.4).
    /// </summary>
    public static Parsed<string> Of(ReadOnlySpan<byte> bytes) =>
        bytes.Length > Largest ? Refusal.Of("picture", $"{bytes.Length / 1e6:0.#} MB", $"at most {Largest / 1_000_000} MB are kept; take it at a smaller size") : MediaType(bytes);

    /// <summary>The same, however large.</summary>
    public static Parsed<string> MediaType(ReadOnlySpan<byte> bytes)
    {
        if (bytes.IsEmpty) return Refusal.Of("picture", null, Wanted);
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF])) return "image/jpeg";
        if (bytes.StartsWith((ReadOnlySpan<byte>)[0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A])) return "image/png";
        if (bytes.StartsWith("RIFF"u8) && bytes[4..].Length >= 8 && bytes.Slice(8, 4).SequenceEqual("WEBP"u8)) return "image/webp";
        return Refusal.Of("picture", Named(bytes), Wanted);
    }

    /// <summary>The id that its content gives it.</summary>
    public static string Id(ReadOnlySpan<byte> bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));

    public static bool IsId(string? text) => text is { Length: 64 } && text.All(char.IsAsciiHexDigitLower);

    /// <summary>HEIC and its kin are ISO base media files: a box "ftyp" and a brand (ISO/IEC 14496-12, 4.3).</summary>
    static string Named(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length >= 12 && bytes[4..].StartsWith("ftyp"u8) && bytes.Slice(8, 4) is var brand
            && (brand.StartsWith("hei"u8) || brand.StartsWith("hev"u8) || brand.StartsWith("mif1"u8) || brand.StartsWith("msf1"u8)))
            return "HEIC (in the phone's camera settings choose JPEG, often called most compatible)";
        if (bytes.StartsWith("%PDF"u8)) return "a PDF";
        if (bytes.StartsWith("GIF8"u8)) return "a GIF";
        return "a file of another kind";
    }
}
