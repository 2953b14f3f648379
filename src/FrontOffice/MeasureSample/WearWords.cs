using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths.Units;

namespace WitnessMark.FrontOffice.MeasureSample;

/// <summary>What readings on worn, bent and repaired features say, and pictures with a scale of their own, in sentences.</summary>
public static class WearWords
{
    /// <summary>Cause: a wear of seven times its mean comes once in a thousand readings.</summary>
    const double Implausible = 7;

    /// <summary>One sentence for each such reading and picture; empty for a sound sample true to scale.</summary>
    public static IEnumerable<string> Of(Sample sample, Plan plan)
    {
        foreach (var r in plan.Believed.Readings.Where(r => r.Used && r.Says != MadeBound.Size))
            yield return $"reading {r.Index + 1}, {Named(sample.Readings[r.Index])}: {Said(sample.Readings[r.Index], r)}";
        foreach (var s in plan.Believed.Scales)
            yield return FormattableString.Invariant($"{s.Name}: shows {Percent(s.Scale.Value)} ± {200 * s.Scale.Std:0.00} %");
    }

    /// <summary>Readings that would mean more wear than was said.</summary>
    public static IEnumerable<string> Cautions(Sample sample, Plan plan)
    {
        foreach (var r in plan.Believed.Readings.Where(r => r.Used && r.WearScale > 0 && Math.Abs(r.Residual) > Implausible * r.WearScale))
        {
            var wear = LengthWriter.Write(Math.Abs(r.Residual));
            yield return $"Reading {r.Index + 1} ({Named(sample.Readings[r.Index])}) would mean that {wear} of metal is gone, where about {LengthWriter.Write(r.WearScale)} was reckoned with: a reading there is wrong, or state a greater wear.";
        }
        var repaired = plan.Features.Where(f => f.Condition == FeatureCondition.Repaired).Select(f => f.Id).ToList();
        if (repaired.Count > 0) yield return $"{string.Join(", ", repaired)}: repaired, and drawn as {(repaired.Count == 1 ? "it is" : "they are")} now; what {(repaired.Count == 1 ? "it was" : "they were")} made to is not known from {(repaired.Count == 1 ? "it" : "them")}.";
    }

    static string Said(Reading reading, ReadingResult r)
    {
        var read = KindRule.Of(reading.Kind).Measure == Measure.Length ? LengthWriter.Write(reading.Value) : null;
        return r.Says switch
        {
            MadeBound.AtLeast => $"was made at least {read}",
            MadeBound.AtMost => $"was made at most {read}",
            MadeBound.About => read is null ? "counts as rough, either way" : $"was made about {read}, either way",
            _ => "says what is there now, not what was made",
        };
    }

    static string Named(Reading r) => $"{KindRule.Of(r.Kind).Words} {r.From}{(r.To is null ? "" : $" {r.To}")}";

    static string Percent(double scale) => FormattableString.Invariant($"everything {Math.Abs(scale - 1) * 100:0.00} % too {(scale < 1 ? "small" : "large")}");
}
