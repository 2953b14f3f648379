using System.Text.RegularExpressions;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.Typed;

namespace WitnessMark.FrontOffice.MeasureSample.Sheet;

/// <summary>What the value cell and the instrument cell of one reading say together.</summary>
readonly record struct ReadWords(double Value, double Sigma, double ValueY = 0);

/// <summary>Reads the two cells for a reading of one kind.</summary>
sealed partial record ReadingWords(IReadingRule Rule, SheetSpelling Spelling, IReadOnlyDictionary<string, Instrument> Instruments, Place Place)
{
    public ReadWords Read(string value, string instrument) => Rule.Measure switch
    {
        Measure.Place => ReadPlace(value, instrument),
        Measure.Touching or Measure.Direction => new ReadWords(0, ConditionSigma(value, instrument)),
        _ => ReadMeasured(value, instrument),
    };

    SigmaWords Sigmas => new(Spelling, Instruments, Place, IsAngle, Rule.Words);

    bool IsAngle => Rule.Measure is Measure.Angle or Measure.Direction;

    ReadWords ReadMeasured(string value, string instrument)
    {
        var (mean, plusMinus, repeats) = IsAngle
            ? Spelling.Angle(value, "value", Place) is var a ? (a.Radians, a.PlusMinus, a.Repeats) : default
            : Spelling.Length(value, "value", Place) is var l ? (l.Mm, l.PlusMinus, l.Repeats) : default;
        var sigma = plusMinus is { } half ? Sigmas.Stated(half, "value") : Sigmas.Of(instrument, repeats.AsSpan());
        return new ReadWords(ReadingValue.Checked(Rule, mean, "value", value, Place), sigma);
    }

    ReadWords ReadPlace(string value, string instrument)
    {
        if (XAndY().Match(value) is not { Success: true } m) throw Place.Refuse("value", value, "write a picked place as x 31.5 y 12");
        var x = Spelling.Length(m.Groups["x"].Value, "value", Place, signed: true).Mm;
        var y = Spelling.Length(m.Groups["y"].Value, "value", Place, signed: true).Mm;
        return new ReadWords(ReadingValue.Coordinate(x, "value", Place), Sigmas.Of(instrument, []), ReadingValue.Coordinate(y, "value", Place));
    }

    double ConditionSigma(string value, string instrument)
    {
        if (value.Length > 0 && !value.Equals("exact", StringComparison.OrdinalIgnoreCase))
        {
            return Sigmas.Alone(value, "value") ?? throw Place.Refuse("value", value, $"{Rule.Words} is a condition: leave the value empty, or write how far off it may be, such as {(IsAngle ? "± 0.5°" : "± 0.1")}");
        }
        return instrument.Length == 0 ? 0 : Sigmas.Of(instrument, []);
    }

    [GeneratedRegex(@"^x\s*(?<x>.+?)\s+y\s*(?<y>.+)$", RegexOptions.IgnoreCase)]
    private static partial Regex XAndY();
}
