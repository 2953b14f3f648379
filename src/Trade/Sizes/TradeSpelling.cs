using System.Globalization;
using System.Text.RegularExpressions;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.Trade;

/// <summary>How the trade writes sizes: lengths, and besides them gauges (14 SWG, SWG 14) and drills (No. 43 drill, F drill).</summary>
public static partial class TradeSpelling
{
    /// <param name="bare">The unit of a bare number; none: a bare number is refused.</param>
    public static Spelling Of(LengthUnit? bare = LengthUnit.Millimetre, DecimalMark mark = DecimalMark.Unsaid, bool signed = false) =>
        new() { Bare = bare, Mark = mark, Signed = signed, Named = Named };

    /// <summary>The size of a gauge or drill, mm; none where the text names neither.</summary>
    static Parsed<double>? Named(string text, string field)
    {
        if (Gauge().Match(text) is { Success: true } gauge)
            return OfGauge(text, gauge.Groups["number"].Value, gauge.Groups["series"].Value, field);
        if (Drill().Match(text) is { Success: true } drill)
            return OfDrill(text, drill.Groups["name"].Value, field);
        if (NumberAlone().Match(text) is { Success: true } alone)
            return Refusal.Of(field, text, $"a number alone could be {Meanings(alone.Groups["number"].Value)}; write which");
        return null;
    }

    static Parsed<double> OfGauge(string text, string number, string series, string field)
    {
        if (Series(series) is not { } which)
            return Refusal.Of(field, text, $"a gauge number could be {Meanings(number, drills: false)}; write which");
        if (Gauges.Find(which, number) is { } size) return size.Mm;
        var all = Gauges.Of(which);
        return Refusal.Of(field, text, $"the list runs from {all[0].Name} to {all[^1].Name}");
    }

    static Parsed<double> OfDrill(string text, string name, string field)
    {
        var drills = Drills.Number.Concat(Drills.Letter);
        var wanted = char.IsAsciiDigit(name[0]) ? $"No. {name} drill" : $"{name.ToUpperInvariant()} drill";
        return drills.FirstOrDefault(d => d.Name == wanted) is { } drill
            ? drill.Mm
            : Refusal.Of(field, text, "drills run from No. 80 to No. 1 and from A to Z");
    }

    static GaugeSeries? Series(string text) => text.Replace(".", "").ToUpperInvariant() switch
    {
        "SWG" => GaugeSeries.Swg,
        "BG" => GaugeSeries.Bg,
        "BWG" => GaugeSeries.Bwg,
        "MSG" => GaugeSeries.Msg,
        "AWG" or "B&S" => GaugeSeries.Awg,
        _ => null,
    };

    static string Meanings(string number, bool drills = true)
    {
        var gauges = Enum.GetValues<GaugeSeries>().Select(s => Gauges.Find(s, number));
        var sizes = drills ? gauges.Append(Drills.Number.FirstOrDefault(d => d.Name == $"No. {number} drill")) : gauges;
        var known = sizes.OfType<NominalSize>()
            .Select(g => string.Create(CultureInfo.InvariantCulture, $"{g.Name} ({g.Mm:0.###} mm)")).ToList();
        return known.Count > 1 ? string.Join(", ", known[..^1]) + " or " + known[^1]
            : known.Count == 1 ? known[0] + " or a number of another list"
            : "of any list: SWG, BG, BWG, MSG or AWG";
    }

    const string GaugeNumber = "(?:no[.]? ?|# ?)?(?<number>[0-9]{1,2}(?:/0)?)";
    const string SeriesName = @"(?<series>s[.]?w[.]?g|b[.]?g|b[.]?w[.]?g|m[.]?s[.]?g|a[.]?w[.]?g|b&s|gauge|gage|ga|g)[.]?";

    [GeneratedRegex($"^(?:{GaugeNumber} ?{SeriesName}|{SeriesName} ?{GaugeNumber})$", RegexOptions.IgnoreCase)]
    private static partial Regex Gauge();

    [GeneratedRegex("^(?:(?:no[.]? ?|# ?|letter ?)?(?<name>[0-9]{1,2}|[a-z]) ?drill|drill ?(?:no[.]? ?|# ?|letter ?)?(?<name>[0-9]{1,2}|[a-z]))$", RegexOptions.IgnoreCase)]
    private static partial Regex Drill();

    [GeneratedRegex("^(?:no[.]? ?|# ?)(?<number>[0-9]{1,2}(?:/0)?)$", RegexOptions.IgnoreCase)]
    private static partial Regex NumberAlone();
}
