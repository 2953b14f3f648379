using System.Globalization;
using System.Text.RegularExpressions;

namespace WitnessMark.Maths.Units;

/// <summary>Which mark a person puts before the decimals.</summary>
public enum DecimalMark
{
    /// <summary>Not said: a point is decimal; a comma is, unless it may just as well part thousands.</summary>
    Unsaid,
    Point,
    Comma,
}

/// <summary>A number as written, without its unit: <c>31.5</c>, <c>31,5</c>, <c>3 5/16</c>, <c>3-5/16</c>, <c>5/8</c>, <c>.064</c>.</summary>
/// <param name="HasFraction">Written with a fraction bar.</param>
/// <param name="BarePoint">Written without the nought before the point, as inch drawings do (ASME Y14.5).</param>
public readonly partial record struct Numeral(double Value, bool HasFraction = false, bool BarePoint = false)
{
    /// <summary>Reads tidied text (see <see cref="Tidy"/>). No sign, no exponent, at most 20 digits, as a double needs 17 to be written whole.</summary>
    public static Parsed<Numeral> Read(string text, DecimalMark mark, string field)
    {
        if (Mixed().Match(text) is { Success: true } mixed) return Fraction(text, mixed, field);
        if (text.Count(char.IsAsciiDigit) is 0 or > 20)
            return Refusal.Of(field, text, "write a number of up to 20 digits, such as 31.5 or 3 5/16");
        if (WholeWithSpaces().IsMatch(text))
            return Refusal.Of(field, text, $"it could be {text.Replace(" ", "")} or {text.Count(c => c == ' ') + 1} numbers; write {text.Replace(" ", "")}, or put ; between repeats");
        if (!Digits().IsMatch(text))
            return Refusal.Of(field, text, "write a number such as 31.5, 3 5/16 or 3-5/16");
        return Decimal(text, mark, field);
    }

    static Parsed<Numeral> Fraction(string text, Match m, string field)
    {
        var whole = m.Groups["whole"].Success ? Whole(m.Groups["whole"].Value) : 0;
        var (part, parts) = (Whole(m.Groups["part"].Value), Whole(m.Groups["parts"].Value));
        if (parts is < 2 or > 1000)
            return Refusal.Of(field, text, "the lower number of a fraction is from 2 to 1000, such as 5/16");
        if (m.Groups["whole"].Success && part >= parts)
            return Refusal.Of(field, text, "the fraction after a whole number is less than one, such as 3 5/16");
        if (m.Groups["gap"].Value.Trim() == "-" && m.Groups["gap"].Length > 1)
            return Refusal.Of(field, text, string.Create(CultureInfo.InvariantCulture,
                $"it could be {whole} and {part}/{parts} or {whole} less {part}/{parts}; write {whole} {part}/{parts} or the difference"));
        return new Numeral(whole + part / parts, HasFraction: true);
    }

    static Parsed<Numeral> Decimal(string text, DecimalMark mark, string field)
    {
        var points = text.Count(c => c == '.');
        var commas = text.Count(c => c == ',');
        if (points + commas == 0) return new Numeral(Whole(text));
        if (points > 0 && commas > 0) return BothMarks(text, mark, field);
        var sign = points > 0 ? '.' : ',';
        var thousands = Thousands(sign).IsMatch(text);
        var groups = text.Count(c => c == sign);
        if (groups > 1)
            return thousands
                ? new Numeral(Whole(text.Replace(sign.ToString(), "")))
                : Refusal.Of(field, text, "write one decimal mark, such as 31.5");
        var asDecimal = Plain(text.Replace(',', '.'));
        if (!thousands || mark == (sign == '.' ? DecimalMark.Point : DecimalMark.Comma)) return asDecimal;
        var asThousands = Whole(text.Replace(sign.ToString(), ""));
        // A point parts decimals unless the person said that commas do; a comma may part either.
        if (sign == '.' && mark == DecimalMark.Unsaid) return asDecimal;
        if (sign == ',' && mark == DecimalMark.Point) return new Numeral(asThousands);
        return Refusal.Of(field, text, string.Create(CultureInfo.InvariantCulture,
            $"it could be {asDecimal.Value} or {asThousands}; write {text.Replace(sign, sign == ',' ? '.' : ',')} or {asThousands}"));
    }

    static Parsed<Numeral> BothMarks(string text, DecimalMark mark, string field)
    {
        var last = text.LastIndexOfAny(['.', ',']);
        var decimalSign = text[last];
        var wholePart = text[..last];
        var groupSign = decimalSign == '.' ? ',' : '.';
        if (wholePart.Contains(decimalSign) || !Thousands(groupSign).IsMatch(wholePart))
            return Refusal.Of(field, text, "write one decimal mark, such as 31.5");
        var read = Plain(wholePart.Replace(groupSign.ToString(), "") + "." + text[(last + 1)..]);
        if (mark == (decimalSign == '.' ? DecimalMark.Point : DecimalMark.Comma)) return read;
        var first = text.IndexOf(groupSign);
        var other = Plain(text[..first].Replace(decimalSign.ToString(), "") + "." + text[(first + 1)..].Replace(".", "").Replace(",", ""));
        return Refusal.Of(field, text, string.Create(CultureInfo.InvariantCulture,
            $"it could be {read.Value} or {other.Value}; write it with one decimal mark and no thousands mark"));
    }

    static Numeral Plain(string digits) =>
        new(double.Parse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture), BarePoint: digits[0] == '.');

    static double Whole(string digits) => double.Parse(digits, NumberStyles.None, CultureInfo.InvariantCulture);

    static Regex Thousands(char sign) => sign == '.' ? PointThousands() : CommaThousands();

    [GeneratedRegex(@"^(?:(?<whole>[0-9]{1,9})(?<gap> ?- ?| ))?(?<part>[0-9]{1,6}) ?/ ?(?<parts>[0-9]{1,6})$")]
    private static partial Regex Mixed();

    [GeneratedRegex("^[0-9]+( [0-9]+)+$")]
    private static partial Regex WholeWithSpaces();

    [GeneratedRegex(@"^[0-9.,]*[0-9]$|^[0-9]+[.]$")]
    private static partial Regex Digits();

    [GeneratedRegex("^[1-9][0-9]{0,2}(,[0-9]{3})+$")]
    private static partial Regex CommaThousands();

    [GeneratedRegex("^[1-9][0-9]{0,2}([.][0-9]{3})+$")]
    private static partial Regex PointThousands();
}
