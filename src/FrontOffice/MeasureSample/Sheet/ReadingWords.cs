using System.Text.RegularExpressions;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.MeasureSample.Sheet;

/// <summary>What the value cell and the instrument cell of one reading say together.</summary>
readonly record struct ReadWords(double Value, double Sigma, double ValueY = 0);

/// <summary>Reads the two cells for a reading of one kind.</summary>
sealed partial record ReadingWords(KindRule Rule, SheetSpelling Spelling, IReadOnlyDictionary<string, Instrument> Instruments, Place Place)
{
    /// <summary>A ± is what 19 in 20 readings keep: twice the standard uncertainty (coverage factor 2; JCGM 100, 6.3.3).</summary>
    const double Coverage = 2;

    public ReadWords Read(string value, string instrument) => Rule.Measure switch
    {
        Measure.Place => ReadPlace(value, instrument),
        Measure.Touching or Measure.Direction => new ReadWords(0, ConditionSigma(value, instrument)),
        _ => ReadMeasured(value, instrument),
    };

    bool IsAngle => Rule.Measure is Measure.Angle or Measure.Direction;

    ReadWords ReadMeasured(string value, string instrument)
    {
        var (mean, plusMinus, repeats) = IsAngle
            ? Spelling.Angle(value, "value", Place) is var a ? (a.Radians, a.PlusMinus, a.Repeats) : default
            : Spelling.Length(value, "value", Place) is var l ? (l.Mm, l.PlusMinus, l.Repeats) : default;
        var sigma = plusMinus is { } half ? ReadingValue.Sigma(half / Coverage, "value", Place) : InstrumentSigma(instrument, repeats.AsSpan());
        return new ReadWords(ReadingValue.Checked(Rule, mean, "value", value, Place), sigma);
    }

    ReadWords ReadPlace(string value, string instrument)
    {
        if (XAndY().Match(value) is not { Success: true } m) throw Place.Refuse("value", value, "write a picked place as x 31.5 y 12");
        var x = Spelling.Length(m.Groups["x"].Value, "value", Place, signed: true).Mm;
        var y = Spelling.Length(m.Groups["y"].Value, "value", Place, signed: true).Mm;
        return new ReadWords(ReadingValue.Coordinate(x, "value", Place), InstrumentSigma(instrument, []), ReadingValue.Coordinate(y, "value", Place));
    }

    double ConditionSigma(string value, string instrument)
    {
        if (value.Length > 0 && !value.Equals("exact", StringComparison.OrdinalIgnoreCase))
        {
            return PlusMinus(value, "value") ?? throw Place.Refuse("value", value, $"{Rule.Words} is a condition: leave the value empty, or write how far off it may be, such as {(IsAngle ? "± 0.5°" : "± 0.1")}");
        }
        return instrument.Length == 0 ? 0 : InstrumentSigma(instrument, []);
    }

    double InstrumentSigma(string instrument, ReadOnlySpan<double> repeats)
    {
        if (PlusMinus(instrument, "instrument") is { } stated) return stated;
        if (!Instruments.TryGetValue(instrument, out var known))
            throw Place.Refuse("instrument", instrument, $"write a ± or one of {string.Join(", ", Instruments.Values.Select(i => i.Name))}");
        if (known.ReadsAngle != IsAngle)
            throw Place.Refuse("instrument", instrument, $"it reads {(known.ReadsAngle ? "angles" : "lengths")}, and a {Rule.Words} is {(IsAngle ? "an angle" : "a length")}; write another or a ±");
        return ReadingValue.Sigma(known.StandardUncertainty(repeats), "instrument", Place);
    }

    /// <summary>Standard uncertainty of a cell that is a ± alone; null when it is something else.</summary>
    double? PlusMinus(string cell, string field)
    {
        if (AloneSign().Match(cell) is not { Success: true } sign) return null;
        var figure = cell[sign.Length..];
        var half = IsAngle ? Spelling.Angle(figure, field, Place).Radians : Spelling.Length(figure, field, Place).Mm;
        return ReadingValue.Sigma(half / Coverage, field, Place);
    }

    [GeneratedRegex(@"^x\s*(?<x>.+?)\s+y\s*(?<y>.+)$", RegexOptions.IgnoreCase)]
    private static partial Regex XAndY();

    [GeneratedRegex(@"^(±|\+/-|\+-)\s*")]
    private static partial Regex AloneSign();
}
