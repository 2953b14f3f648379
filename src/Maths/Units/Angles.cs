using System.Collections.Immutable;
using System.Text.RegularExpressions;

namespace WitnessMark.Maths.Units;

/// <summary>Angles at the edge: degrees, minutes and seconds or radians as people write them, to radians. A bare number is degrees.</summary>
public static partial class Angles
{
    /// <summary>Largest angle read, degrees: two turns.</summary>
    public const double Largest = 720;

    const string Example = "an angle such as 5.5°, 5° 30', 5 deg 30 min, 90 or 1.2 rad";

    enum AngleUnit { Degrees, Radians }

    /// <param name="text">Up to 200 characters.</param>
    /// <param name="field">What the refusal calls it.</param>
    public static Parsed<WrittenAngle> Read(string? text, Spelling? spelling = null, string field = "angle")
    {
        var how = spelling ?? Spelling.Usual;
        var statement = Statement.Read<AngleUnit>(text, field, Example, part => One(part, how, field));
        if (statement.Refusal is { } refused) return refused;
        var said = statement.Value;
        var bare = said.Unit ?? AngleUnit.Degrees;
        var repeats = said.Values.Select(p => Radians(p, bare)).ToImmutableArray();
        if (repeats.Any(r => Math.Abs(r) > Largest * Math.PI / 180))
            return Refusal.Of(field, text, "write an angle of at most two turns, 720°");
        return new WrittenAngle(repeats.Sum() / repeats.Length)
        {
            PlusMinus = said.PlusMinus is { } pm ? Radians(pm, bare) : null,
            Repeats = repeats,
        };
    }

    static double Radians(Part<AngleUnit> part, AngleUnit bare) =>
        (part.Unit ?? bare) == AngleUnit.Degrees ? part.Value * Math.PI / 180 : part.Value;

    static Parsed<Part<AngleUnit>> One(string text, Spelling spelling, string field)
    {
        var negative = text[0] == '-';
        var read = Size(text[0] is '-' or '+' ? text[1..].TrimStart() : text, text, spelling.Mark, field);
        if (read.Refusal is not null || !negative || read.Value.Value == 0) return read;
        return spelling.Signed
            ? read.Value with { Value = -read.Value.Value }
            : Refusal.Of(field, text, "the angle is not negative; write it without the minus");
    }

    static Parsed<Part<AngleUnit>> Size(string text, string whole, DecimalMark mark, string field)
    {
        if (Sexagesimal().Match(text) is { Success: true } m) return FromSexagesimal(m, whole, mark, field);
        if (Plain().Match(text) is not { Success: true } plain)
            return PrimeAlone().IsMatch(text)
                ? Refusal.Of(field, whole, $"it could be minutes of arc or feet; write 0° {text}")
                : Refusal.Of(field, whole, $"write {Example}");
        var number = Numeral.Read(plain.Groups["number"].Value.Trim(), mark, field);
        if (number.Refusal is { } refused) return refused;
        var unit = plain.Groups["unit"].Value.ToLowerInvariant();
        return unit switch
        {
            "" => new Part<AngleUnit>(number.Value.Value, null),
            "rad" or "radian" or "radians" => new Part<AngleUnit>(number.Value.Value, AngleUnit.Radians),
            _ => new Part<AngleUnit>(number.Value.Value, AngleUnit.Degrees),
        };
    }

    static Parsed<Part<AngleUnit>> FromSexagesimal(Match m, string whole, DecimalMark mark, string field)
    {
        double degrees = 0, scale = 1;
        var fraction = "";
        foreach (var name in (string[])["degrees", "minutes", "seconds"])
        {
            if (m.Groups[name].Value.Trim() is { Length: > 0 } said)
            {
                if (fraction.Length > 0)
                    return Refusal.Of(field, whole, $"write whole {fraction} before {name}");
                var number = Numeral.Read(said, mark, field);
                if (number.Refusal is { } refused) return refused;
                if (name != "degrees" && number.Value.Value >= 60)
                    return Refusal.Of(field, whole, $"{name} are fewer than 60");
                degrees += number.Value.Value * scale;
                if (number.Value.Value != Math.Floor(number.Value.Value)) fraction = name;
            }
            scale /= 60;
        }
        return new Part<AngleUnit>(degrees, AngleUnit.Degrees);
    }

    /// <summary>Degrees with minutes and perhaps seconds; or minutes, seconds in words.</summary>
    [GeneratedRegex(@"^(?:(?<degrees>[0-9.,]+) ?(?:°|deg|degs|degree|degrees)[.]? ?(?<minutes>[0-9.,]+) ?(?:'|min|mins|minute|minutes)[.]?(?: ?(?<seconds>[0-9.,]+) ?(?:""|sec|secs|second|seconds)[.]?)?|(?<minutes>[0-9.,]+) ?(?:min|mins|minute|minutes)[.]?(?: ?(?<seconds>[0-9.,]+) ?(?:sec|secs|second|seconds)[.]?)?)$", RegexOptions.IgnoreCase)]
    private static partial Regex Sexagesimal();

    [GeneratedRegex("^(?<number>[0-9.,/ -]+?) ?(?<unit>°|deg|degs|degree|degrees|rad|radian|radians)?[.]?$", RegexOptions.IgnoreCase)]
    private static partial Regex Plain();

    [GeneratedRegex("^[0-9.,]+ ?'( ?[0-9.,]+ ?\"?)?$")]
    private static partial Regex PrimeAlone();
}
