using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.Cli.Survey;

/// <summary>A plan in words and columns.</summary>
static class PlanWords
{
    public static void Write(TextWriter to, MeasureResult result)
    {
        var (sample, plan) = (result.Sample, result.Plan);
        to.WriteLine($"{sample.Id}{(sample.Title.Length > 0 ? $", {sample.Title}" : "")}");
        to.WriteLine($"{sample.Readings.Length} readings, redundancy {plan.Redundancy}, weighted sum of squares {plan.WeightedSumOfSquares:0.00}"
            + $" (expected {plan.Global.Low:0.0} to {plan.Global.High:0.0}); {plan.Convergence.Words.TrimEnd('.')}.");
        foreach (var caution in result.Cautions) to.WriteLine($"! {caution}");

        to.WriteLine();
        to.WriteLine($"{"",-12}{"x mm",12}{"y mm",12}{"± mm",10}  size");
        foreach (var feature in plan.Believed.Features) to.WriteLine($"{Row(feature)}{(feature.Condition == FeatureCondition.Sound ? "" : $"  {feature.Condition.ToString().ToLowerInvariant()}")}");

        foreach (var sentence in WearWords.Of(sample, plan)) to.WriteLine(sentence);

        var doubtful = plan.Readings.Where(r => r.Doubtful).ToList();
        if (doubtful.Count == 0) return;
        to.WriteLine();
        foreach (var r in doubtful)
        {
            var reading = sample.Readings[r.Index];
            to.WriteLine($"doubtful: reading {r.Index + 1}, {KindRule.Of(reading.Kind).Words} {reading.From} {reading.To}: {Shown(reading)}, normalised residual {r.Normalised:0.0}{WouldRead(plan, reading)}");
        }
    }

    /// <summary>What the others say it should have been; for lengths only.</summary>
    static string WouldRead(Plan plan, Reading reading) =>
        reading.Kind is ReadingKind.AngleBetweenEdges or ReadingKind.Parallel or ReadingKind.Square || plan.Believed.Readings[reading.Index].WouldRead is not { } value ? "" : $"; the others say {LengthWriter.Write(value)}";

    static string Shown(Reading reading) => reading.Written.Length > 0 ? reading.Written : LengthWriter.Write(reading.Value);

    static string Row(Placed f)
    {
        if (f.Loose) return $"{f.Id,-12}{"loose",12}";
        if (f.Kind == FeatureKind.Edge) return $"{f.Id,-12}{"",34}  {(f.Length is { } length ? LengthWriter.WriteExpanded(length) : "")}";
        var size = f.Size is { } s ? LengthWriter.WriteExpanded(s) : "";
        return $"{f.Id,-12}{f.At.X,12:0.000}{f.At.Y,12:0.000}{new Uncertain(0, f.Ellipse.Major).Expanded,10:0.000}  {size}";
    }
}
