using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Maths.Units;

namespace WitnessMark.FrontOffice.MeasureSolid;

/// <summary>A reading under doubt beside what the others say of it.</summary>
public static class DoubtfulWords
{
    /// <summary>How near to a tenfold the two must be for a slipped decimal point. Cause: a slip leaves the digits, so the two agree within the survey's own ±.</summary>
    const double Near = 0.01;

    /// <summary><c>reading 1, distance P1 P2: 707.38; the others say 70.74 mm; a decimal point?</c> Its number counts from 1.</summary>
    public static string Say(SolidResult result, int index)
    {
        var reading = result.Sample.Readings[index];
        var rule = SolidRule.Of(reading.Kind);
        var name = $"{result.Name(index)}, {rule.Words} {reading.From}{(reading.To is { } to ? $" {to}" : "")}";
        if (rule.IsCondition) return $"{name}: {Kept(result, reading)}";
        var shown = reading.Written.Length > 0 ? reading.Written : LengthWriter.Write(reading.Value);
        if (rule.Measure != Measure.Length || result.Plan.Believed.Readings[index].WouldRead is not { } value) return $"{name}: {shown}";
        return $"{name}: {shown}; the others say {LengthWriter.Write(value)}{(IsTenfold(reading.Value, value) ? "; a decimal point?" : "")}";
    }

    static string Kept(SolidResult result, SolidReading reading)
    {
        var pair = reading.Kind == SolidReadingKind.On ? null : result.Part?.Pairs.FirstOrDefault(p => (p.A, p.B) == (reading.From, reading.To) || (p.B, p.A) == (reading.From, reading.To));
        return pair?.Angle is { } angle ? $"the other readings say {AngleWriter.Write(angle)} between them" : "the other readings do not agree that it holds";
    }

    /// <summary>A tenth, ten times, a hundred times.</summary>
    public static bool IsTenfold(double read, double others)
    {
        if (!(read > 0 && others > 0)) return false;
        var powers = Math.Log10(read / others);
        return Math.Round(powers) is not 0 and >= -3 and <= 3 && Math.Abs(powers - Math.Round(powers)) < Near / Math.Log(10);
    }
}
