using System.Text;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Intake;

/// <summary>A file's bytes as text, and which encoding they were taken for.</summary>
public sealed record ListText(string Text, string Encoding)
{
    /// <summary>
    /// 0x80 to 0x9F in Windows-1252 (WHATWG Encoding standard, index windows-1252); every other byte is its own character. The library of all
    /// code pages would be 0.7 MB more of the app for these 32.
    /// </summary>
    const string From80 =
        "\u20AC\u0081\u201A\u0192\u201E\u2026\u2020\u2021\u02C6\u2030\u0160\u2039\u0152\u008D\u017D\u008F" +
        "\u0090\u2018\u2019\u201C\u201D\u2022\u2013\u2014\u02DC\u2122\u0161\u203A\u0153\u009D\u017E\u0178";

    static readonly Encoding Strict = new UTF8Encoding(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>
    /// By the byte order mark (Unicode standard, 23.8); without one UTF-16 when every second byte of the beginning is zero,
    /// UTF-8 when it is well formed, else Windows-1252, in which any bytes are text.
    /// </summary>
    public static Parsed<ListText> Read(ReadOnlySpan<byte> bytes) => bytes switch
    {
        [0xEF, 0xBB, 0xBF, ..] => Utf8(bytes[3..]) is { } text ? new ListText(text, "UTF-8") : Broken,
        [0xFF, 0xFE, ..] => new ListText(System.Text.Encoding.Unicode.GetString(bytes[2..]), "UTF-16"),
        [0xFE, 0xFF, ..] => new ListText(System.Text.Encoding.BigEndianUnicode.GetString(bytes[2..]), "UTF-16"),
        [not 0, 0, not 0, 0, ..] => new ListText(System.Text.Encoding.Unicode.GetString(bytes), "UTF-16"),
        [0, not 0, 0, not 0, ..] => new ListText(System.Text.Encoding.BigEndianUnicode.GetString(bytes), "UTF-16"),
        _ when bytes.Contains((byte)0) => Refusal.Of("list", "a file that is not text", "save the list as CSV from the spreadsheet and give that file"),
        _ => Utf8(bytes) is { } text ? new ListText(text, "UTF-8")
            : new ListText(Windows1252(bytes), "Windows-1252"),
    };

    static Refusal Broken => Refusal.Of("list", "text that says it is UTF-8 and is not", "save it again as UTF-8");

    static string Windows1252(ReadOnlySpan<byte> bytes)
    {
        var text = new char[bytes.Length];
        for (var i = 0; i < text.Length; i++) text[i] = bytes[i] is >= 0x80 and <= 0x9F ? From80[bytes[i] - 0x80] : (char)bytes[i];
        return new(text);
    }

    static string? Utf8(ReadOnlySpan<byte> bytes)
    {
        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }
}
