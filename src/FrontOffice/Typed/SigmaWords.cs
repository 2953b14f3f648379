using System.Text.RegularExpressions;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.Typed;

/// <summary>How good a typed value is: by a ± or by the name of an instrument.</summary>
/// <param name="What">The kind of thing read, as a refusal names it.</param>
sealed partial record SigmaWords(SheetSpelling Spelling, IReadOnlyDictionary<string, Instrument> Instruments, Place Place, bool IsAngle, string What)
{
    /// <summary>A ± is what 19 in 20 readings keep: twice the standard uncertainty (coverage factor 2; JCGM 100, 6.3.3).</summary>
    const double Coverage = 2;

    /// <summary>mm or radians: a nanometre and a nanoradian. Less is a slip of the pen.</summary>
    public const double Smallest = 1e-6;

    /// <summary>Standard uncertainty of what an instrument cell says, mm or radians.</summary>
    public double Of(string instrument, ReadOnlySpan<double> repeats)
    {
        if (Alone(instrument, "instrument") is { } stated) return stated;
        if (!Instruments.TryGetValue(instrument, out var known))
            throw Place.Refuse("instrument", instrument, $"write a ± or one of {string.Join(", ", Instruments.Values.Select(i => i.Name))}");
        if (known.ReadsAngle != IsAngle)
            throw Place.Refuse("instrument", instrument, $"it reads {(known.ReadsAngle ? "angles" : "lengths")}, and {What} is {(IsAngle ? "an angle" : "a length")}; write another or a ±");
        return Checked(known.StandardUncertainty(repeats), "instrument", Place);
    }

    /// <summary>Standard uncertainty of a cell that is a ± alone; null when it is something else.</summary>
    public double? Alone(string cell, string field)
    {
        if (Sign().Match(cell) is not { Success: true } sign) return null;
        var figure = cell[sign.Length..];
        return Stated(IsAngle ? Spelling.Angle(figure, field, Place).Radians : Spelling.Length(figure, field, Place).Mm, field);
    }

    public static bool IsAlone(string cell) => Sign().IsMatch(cell);

    /// <param name="half">The ± as written, mm or radians.</param>
    public double Stated(double half, string field) => Checked(half / Coverage, field, Place);

    public static double Checked(double? sigma, string field, Place place) => sigma switch
    {
        null => throw place.Refuse(field, null, "say how good the reading is: a known instrument or one standard deviation more than 0"),
        >= Smallest and <= 1e5 => sigma.Value,
        _ => throw place.Refuse(field, $"{sigma.Value:R}", "one standard deviation is more than 0 (at least 0.000001) and at most 100000"),
    };

    [GeneratedRegex(@"^(±|\+/-|\+-)\s*")]
    private static partial Regex Sign();
}
