using System.Globalization;
using System.Text.RegularExpressions;

namespace WitnessMark.Maths.Units;

/// <summary>Reads one length of a statement: a number and its unit, feet and inches, an inch fraction with its residue, or a named size.</summary>
static partial class LengthParts
{
    const string Known = "mm, cm, m, in, thou or ft";

    /// <param name="text">Tidied.</param>
    public static Parsed<Part<LengthUnit>> Read(string text, Spelling spelling, string field)
    {
        if (spelling.Named(text, field) is { } named)
            return named.Refusal is { } wrongName ? wrongName : new Part<LengthUnit>(named.Value, LengthUnit.Named);
        var bare = text.TrimStart('⌀', 'Ø', 'ø', ' ');
        var negative = bare.StartsWith('-');
        var size = negative || bare.StartsWith('+') ? bare[1..].TrimStart() : bare;
        var read = Size(size, text, spelling.Mark, field);
        if (read.Refusal is not null || !negative || read.Value.Value == 0) return read;
        return spelling.Signed
            ? read.Value with { Value = -read.Value.Value }
            : Refusal.Of(field, text, "a dimension is not negative; write it without the minus");
    }

    static Parsed<Part<LengthUnit>> Size(string text, string whole, DecimalMark mark, string field)
    {
        if (Residue().Match(text) is { Success: true } sum) return WithResidue(sum, whole, mark, field);
        if (FeetInches().Match(text) is { Success: true } feet) return Feet(feet, whole, mark, field);
        var end = text.AsSpan().IndexOfAnyExcept("0123456789.,/- ");
        var unitText = end < 0 ? "" : text[end..].Trim();
        var numberText = (end < 0 ? text : text[..end]).Trim();
        var unit = Unit(unitText, numberText, whole, field);
        if (unit.Refusal is { } unknown) return unknown;
        if (numberText.Length == 0) return Refusal.Of(field, whole, unit.Value is null ? "write a number such as 31.5 mm" : "write a number before the unit, such as 31.5 mm");
        var number = Numeral.Read(numberText, mark, field);
        if (number.Refusal is { } refused) return refused;
        return Metric(unit.Value) && number.Value.HasFraction
            ? Refusal.Of(field, whole, string.Create(CultureInfo.InvariantCulture,
                $"it could be {number.Value.Value:0.######} {unitText} or {numberText} in; write {number.Value.Value:0.######} {unitText} or {numberText} in"))
            : new Part<LengthUnit>(number.Value.Value, unit.Value, number.Value.HasFraction, number.Value.BarePoint);
    }

    static bool Metric(LengthUnit? unit) => unit is LengthUnit.Millimetre or LengthUnit.Centimetre or LengthUnit.Metre or LengthUnit.Thou;

    static Parsed<LengthUnit?> Unit(string text, string number, string whole, string field)
    {
        if (text.Length == 0) return (LengthUnit?)null;
        if (OneUnit(text) is { } unit) return unit;
        if (text == "'")
            return Refusal.Of(field, whole, $"it could be {number} feet or {number} minutes of arc; write {number} ft");
        if (text.TrimEnd('.').Equals("mil", StringComparison.OrdinalIgnoreCase) || text.Equals("mils", StringComparison.OrdinalIgnoreCase))
            return Refusal.Of(field, whole, $"it could be {number} thousandths of an inch or {number} mm; write {number} thou or {number} mm");
        var said = Words().Matches(text).Select(m => m.Value).Where(w => OneUnit(w) is not null).ToList();
        if (said.Count > 1)
            return Refusal.Of(field, whole, $"it has two units, {said[0]} and {said[1]}; write one");
        return Refusal.Of(field, whole, said.Count == 1 && number.Length > 0
            ? $"write one number and one unit, such as {number} {said[0]}, and ; between repeats"
            : $"the unit is not known; write {Known}");
    }

    static LengthUnit? OneUnit(string text) => text.TrimEnd('.').ToLowerInvariant() switch
    {
        "mm" or "millimetre" or "millimetres" or "millimeter" or "millimeters" => LengthUnit.Millimetre,
        "cm" or "centimetre" or "centimetres" or "centimeter" or "centimeters" => LengthUnit.Centimetre,
        "m" or "metre" or "metres" or "meter" or "meters" => LengthUnit.Metre,
        "\"" or "in" or "ins" or "inch" or "inches" => LengthUnit.Inch,
        "thou" or "thous" or "thousandths" => LengthUnit.Thou,
        "ft" or "foot" or "feet" => LengthUnit.Foot,
        _ => null,
    };

    /// <summary><c>1 ft 2 1/2 in</c>, <c>1' 2 1/2"</c>, <c>1'-2 1/2"</c>: the inches, if any are written, are fewer than 12.</summary>
    static Parsed<Part<LengthUnit>> Feet(Match m, string whole, DecimalMark mark, string field)
    {
        var feet = Numeral.Read(m.Groups["feet"].Value, mark, field);
        if (feet.Refusal is { } noFeet) return noFeet;
        var inches = Numeral.Read(m.Groups["inches"].Value.Trim(), mark, field);
        if (inches.Refusal is { } noInches) return noInches;
        if (feet.Value.Value != Math.Floor(feet.Value.Value))
            return Refusal.Of(field, whole, "write whole feet before inches, such as 1 ft 2 1/2 in");
        return inches.Value.Value < 12
            ? new Part<LengthUnit>(feet.Value.Value * 12 + inches.Value.Value, LengthUnit.Inch, HasFraction: true)
            : Refusal.Of(field, whole, "the inches after feet are fewer than 12, such as 1 ft 2 1/2 in; minutes and seconds of arc are no length");
    }

    /// <summary><c>3 5/16" + 0.0042"</c>, as fractions are written out with what is left over.</summary>
    static Parsed<Part<LengthUnit>> WithResidue(Match m, string whole, DecimalMark mark, string field)
    {
        var main = Numeral.Read(m.Groups["main"].Value.Trim(), mark, field);
        if (main.Refusal is { } noMain) return noMain;
        var rest = Numeral.Read(m.Groups["rest"].Value.Trim(), mark, field);
        if (rest.Refusal is { } noRest) return noRest;
        var inches = main.Value.Value + (m.Groups["sign"].Value == "+" ? rest.Value.Value : -rest.Value.Value);
        return inches >= 0
            ? new Part<LengthUnit>(inches, LengthUnit.Inch, HasFraction: true)
            : Refusal.Of(field, whole, "the residue is smaller than the fraction it follows");
    }

    [GeneratedRegex(@"^(?<feet>[0-9.,]+) ?(?:'|ft|foot|feet)[.]?(?: |-)?(?<inches>[0-9.,/ -]+?) ?(?:""|in|ins|inch|inches)?[.]?$", RegexOptions.IgnoreCase)]
    private static partial Regex FeetInches();

    [GeneratedRegex(@"^(?<main>[0-9.,/ -]+?) ?(?:""|in) (?<sign>[+-]) (?<rest>[0-9.,]+) ?(?:""|in)$", RegexOptions.IgnoreCase)]
    private static partial Regex Residue();

    [GeneratedRegex(@"[a-zA-Z]+|""|'")]
    private static partial Regex Words();
}
