using System.Globalization;
using WitnessMark.FrontOffice.Typed;

namespace WitnessMark.FrontOffice.MeasureSample;

/// <summary>The ranges a reading's figures must keep, whichever file they come from.</summary>
static class ReadingValue
{
    /// <summary>The value when it is one that its kind can have; mm or radians.</summary>
    public static double Checked(IReadingRule rule, double value, string field, string? written, Place place)
    {
        if (rule.Measure == Measure.Angle)
        {
            return value is > 0 and < Math.PI
                ? value
                : throw place.Refuse(field, written ?? Spelled(value), "an angle is more than 0 and less than 180 degrees");
        }
        var low = rule.MayBeZero ? "0 mm or more" : "more than 0 mm";
        var good = value <= SampleDraft.Longest && (rule.MayBeZero ? value >= 0 : value > 0);
        return good ? value : throw place.Refuse(field, written ?? Spelled(value), $"{rule.One} is {low} and at most {SampleDraft.Longest:0} mm");
    }

    public static double Coordinate(double value, string field, Place place) =>
        Math.Abs(value) <= SampleDraft.Longest ? value : throw place.Refuse(field, Spelled(value), $"a picked place lies within {SampleDraft.Longest:0} mm of the paper's corner");

    static string Spelled(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
