using System.Text.RegularExpressions;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.Trade;

/// <summary>Thread pitch at the edge: <c>26 TPI</c>, <c>1.25 mm</c>, or a count over a length, <c>10 threads in 12.5 mm</c>.</summary>
public static partial class Pitches
{
    const string Example = "write a pitch such as 26 TPI, 1.25 mm or 10 threads in 12.5 mm";

    /// <returns>Pitch, mm, with the ± of the length where one is written.</returns>
    public static Parsed<WrittenLength> Read(string? text, Spelling? spelling = null, string field = "pitch")
    {
        if (string.IsNullOrWhiteSpace(text) || text.Length > 200) return Refusal.Of(field, text, Example);
        if (Tpi().Match(text) is { Success: true } tpi)
            return Over(new WrittenLength(Inch.Mm, LengthUnit.Inch), tpi.Groups["count"].Value, text, field);
        if (Counted().Match(text) is { Success: true } counted)
        {
            var length = Lengths.Read(counted.Groups["length"].Value, spelling, field);
            return length.Ok ? Over(length.Value, counted.Groups["count"].Value, text, field) : length;
        }
        var pitch = Lengths.Read(text, spelling, field);
        return pitch.Ok && pitch.Value.Mm <= 0 ? Refusal.Of(field, text, Example) : pitch;
    }

    static Parsed<WrittenLength> Over(WrittenLength length, string count, string text, string field)
    {
        var threads = Numeral.Read(count, DecimalMark.Unsaid, field);
        if (threads.Refusal is { } refused) return refused;
        if (threads.Value.Value is < 1 or > 1000) return Refusal.Of(field, text, "count from 1 to 1000 threads");
        var n = threads.Value.Value;
        if (length.Mm <= 0) return Refusal.Of(field, text, Example);
        return length with { Mm = length.Mm / n, PlusMinus = length.PlusMinus / n, Repeats = [.. length.Repeats.Select(r => r / n)] };
    }

    [GeneratedRegex(@"^\s*(?<count>[0-9.,/ ]+?)\s*(?:tpi|t[.]p[.]i[.]?|threads? per inch)\s*$", RegexOptions.IgnoreCase)]
    private static partial Regex Tpi();

    [GeneratedRegex(@"^\s*(?<count>[0-9.,/ ]+?)\s*threads?\s+(?:in|over)\s+(?<length>\S.*)$", RegexOptions.IgnoreCase)]
    private static partial Regex Counted();
}
