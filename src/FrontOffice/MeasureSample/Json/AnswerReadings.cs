using System.Text.Json;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.MeasureSample.Json;

/// <summary>What the adjustment says of each reading.</summary>
static class AnswerReadings
{
    /// <summary>Normalised residuals closer than this are equal: ties of equal suspects differ by rounding in the adjustment only.</summary>
    const double Tie = 1e-6;

    public static void Write(Utf8JsonWriter json, Sample sample, Plan plan)
    {
        WriteLargest(json, plan);
        var byIndex = sample.Readings.ToDictionary(r => r.Index);
        json.WriteList("readings", plan.Readings.Where(r => r.Used), r =>
        {
            var unit = KindRule.Of(byIndex[r.Index].Kind).Measure is Measure.Angle or Measure.Direction ? "rad" : "mm";
            json.WriteNumber("index", r.Index);
            json.WriteFinite($"adjusted_{unit}", r.Adjusted);
            json.WriteFinite($"residual_{unit}", r.Residual);
            json.WriteFinite("redundancy_number", r.RedundancyNumber);
            json.WriteFinite("normalised_residual", r.Normalised);
            json.WriteFinite($"smallest_detectable_{unit}", r.SmallestDetectable);
            json.WriteFinite($"would_read_{unit}", r.WouldRead);
            json.WriteBoolean("doubtful", r.Doubtful);
            if (r.Says != MadeBound.Size) json.WriteString("says_of_made_size", Said(r.Says));
        });
    }

    static string Said(MadeBound says) => says switch
    {
        MadeBound.AtLeast => "at_least",
        MadeBound.AtMost => "at_most",
        MadeBound.About => "about",
        _ => "nothing",
    };

    static void WriteLargest(Utf8JsonWriter json, Plan plan)
    {
        var largest = plan.Readings.Where(r => r is { Used: true, Normalised: not null }).MaxBy(r => Math.Abs(r.Normalised!.Value));
        if (largest is null)
        {
            json.WriteNull("largest_normalised_residual");
            return;
        }
        var size = Math.Abs(largest.Normalised!.Value);
        var tied = plan.Readings.Where(r => r.Used && r.Index != largest.Index && r.Normalised is { } n && size - Math.Abs(n) < Tie * size).Select(r => r.Index);
        json.WriteLargest(largest.Index, size, tied);
    }
}
