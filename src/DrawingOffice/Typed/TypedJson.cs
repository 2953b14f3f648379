using System.Text.Json;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Typed;

/// <summary>
/// Reads a shape from the JSON a person can type. A length is a number in mm or a text with its unit, gauge or drill; an angle a number in
/// degrees or a text. A field that is not known is refused: a slip of the pen must not pass for nothing.
/// </summary>
public static class TypedJson
{
    /// <summary>Longest text accepted, characters.</summary>
    public const int Longest = 4_000_000;

    /// <param name="whole">What refusals call the file, e.g. "rail".</param>
    /// <param name="read">Throws <see cref="RefusedException"/> by way of <see cref="JsonField"/>.</param>
    public static Parsed<T> Read<T>(string json, string whole, Func<JsonField, T> read)
    {
        if (json.Length > Longest) return Refusal.Of(whole, $"{json.Length} characters", $"at most {Longest}");
        try
        {
            using var document = JsonDocument.Parse(json);
            return read(new(whole, document.RootElement, Length));
        }
        catch (JsonException e)
        {
            return Refusal.Of(whole, "this text", "it is not complete JSON here", (int)(e.LineNumber ?? 0) + 1);
        }
        catch (RefusedException e)
        {
            return e.Refusal;
        }
    }

    static Parsed<double> Length(string text)
    {
        var read = Lengths.Read(text, TradeSpelling.Of(signed: true));
        return read.Refusal is { } refusal ? refusal : read.Value.Mm;
    }
}
