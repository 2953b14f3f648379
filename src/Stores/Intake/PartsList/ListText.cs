using System.Text;
using WitnessMark.Maths;

namespace WitnessMark.Stores.Intake;

/// <summary>A file's bytes as text, and which encoding they were taken for.</summary>
public sealed record ListText(string Text, string Encoding)
{
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
            : new ListText(CodePagesEncodingProvider.Instance.GetEncoding(1252)!.GetString(bytes), "Windows-1252"),
    };

    static Refusal Broken => Refusal.Of("list", "text that says it is UTF-8 and is not", "save it again as UTF-8");

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
