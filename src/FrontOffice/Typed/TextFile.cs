using System.Text;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.Typed;

/// <summary>The bytes of a file as text, within limits that no survey by hand comes near.</summary>
static class TextFile
{
    /// <summary>Bytes. A survey of 4,000 readings takes about 0.7 MB.</summary>
    public const int Largest = 16_000_000;

    public const int MostFeatures = 5_000;
    public const int MostReadings = 40_000;

    static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    public static string Decode(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length > Largest)
            throw new RefusedException(Refusal.Of("file", $"{bytes.Length / 1e6:0.#} MB", $"it may hold at most {Largest / 1_000_000} MB"));
        if (bytes.StartsWith(Encoding.UTF8.Preamble)) bytes = bytes[Encoding.UTF8.Preamble.Length..];
        try
        {
            return Strict.GetString(bytes);
        }
        catch (DecoderFallbackException e)
        {
            var at = Math.Clamp(e.Index, 0, bytes.Length);
            var line = 1 + bytes[..at].Count((byte)'\n');
            throw new RefusedException(Refusal.Of("text", $"byte {Hex(e.BytesUnknown)}", "save the file as UTF-8", line));
        }
    }

    static string Hex(byte[]? bytes) => Convert.ToHexString(bytes ?? []);
}
