using System.Globalization;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.Cli.Survey;

/// <summary>A plan in space in words and columns.</summary>
static class SolidPlanWords
{
    public static void Write(TextWriter to, SolidResult result)
    {
        // Figures of a plan that one reading keeps from settling say nothing; those without it do.
        var (sample, plan) = (result.Sample, result.Plan.Convergence.Converged ? result.Plan : result.Plan.Believed);
        to.WriteLine($"{sample.Id}{(sample.Title.Length > 0 ? $", {sample.Title}" : "")}");
        to.WriteLine($"{plan.Readings.Count(r => r.Used)} readings, redundancy {plan.Redundancy}, weighted sum of squares {Figure(plan.WeightedSumOfSquares, "0.00")}"
            + $" (expected {Figure(plan.Global.Low, "0.0")} to {Figure(plan.Global.High, "0.0")}); {plan.Convergence.Words.TrimEnd('.')}.");
        foreach (var caution in result.Cautions) to.WriteLine($"! {caution}");
        if (result.Part is not { } part) return;

        to.WriteLine();
        to.WriteLine($"{"",-12}{"x mm",12}{"y mm",12}{"z mm",12}{"± mm",10}  size");
        foreach (var p in part.Points) to.WriteLine(Row(p.Id, p.At, p.Std, p.Loose, ""));
        foreach (var r in part.Rounds) to.WriteLine(Row(r.Id, r.Centre, r.Std, r.Loose, r.Diameter is { } d ? LengthWriter.WriteExpanded(d) : "size not read"));
        foreach (var l in part.Lines.Where(l => l.Length is not null)) to.WriteLine($"{l.Id,-12}{"",48}{(l.Loose ? "loose" : LengthWriter.WriteExpanded(l.Length!.Value))}");
        if (part.Pairs.Length > 0) to.WriteLine("\nFaces to one another");
        foreach (var pair in part.Pairs)
            to.WriteLine($"  {pair.A} to {pair.B}: {(pair.Apart is { } apart ? $"parallel, {LengthWriter.WriteExpanded(apart)} apart" : pair.Angle is { } angle ? $"setting angle {AngleWriter.WriteExpanded(angle)}" : "not held by the readings")}");
        if (part.Heights.Length > 0) to.WriteLine($"\nHeights over face {part.Heights[0].Face}");
        foreach (var h in part.Heights) to.WriteLine($"  {h.Id}: {(h.Height is { } height ? LengthWriter.WriteExpanded(height) : "not held by the readings")}");
        foreach (var note in part.Notes.Take(1)) to.WriteLine($"\n{note}");
        Doubtful(to, result);
        if (result.Next is { Words.Length: > 0 } next) to.WriteLine($"\nNext: {next.Words}{(next is { Enough: false, Readings: [var best, ..] } ? $" Take {Said(best)}." : "")}");
    }

    public static void WriteNext(TextWriter to, SolidResult result)
    {
        if (result.Next is not { } next)
        {
            foreach (var caution in result.Cautions) to.WriteLine(caution);
            return;
        }
        to.WriteLine(next.Words);
        foreach (var n in next.Readings) to.WriteLine($"  {Said(n)}: {n.Words}");
    }

    static string Said(SolidNextReading n)
    {
        var rule = SolidRule.Of(n.Kind);
        var expected = rule.Measure switch { Measure.Length => $", about {LengthWriter.Write(n.Expected)}", Measure.Angle => $", about {AngleWriter.Write(n.Expected)}", _ => "" };
        return $"{rule.Words} {n.From}{(n.To is null ? "" : $" {n.To}")}{(n.Instrument.Length > 0 ? $" by {n.Instrument}" : "")}{expected}";
    }

    static void Doubtful(TextWriter to, SolidResult result)
    {
        foreach (var r in result.Plan.Readings.Where(r => r.Doubtful))
        {
            var strength = result.Plan.Convergence.Converged ? $", normalised residual {Figure(r.Normalised ?? 0, "0.0")}" : "";
            to.WriteLine($"\ndoubtful: {DoubtfulWords.Say(result, r.Index)}{strength}");
        }
    }

    static string Row(string id, Vec3 at, double? std, bool loose, string size) => loose
        ? $"{id,-12}{"loose",12}{"",36}{size}"
        : $"{id,-12}{Figure(at.X, "0.000"),12}{Figure(at.Y, "0.000"),12}{Figure(at.Z, "0.000"),12}{(std is { } s ? Figure(2 * s, "0.000") : ""),10}  {size}";

    // No minus before a nought.
    static string Figure(double value, string format) =>
        value.ToString(format, CultureInfo.InvariantCulture) is var text && text.AsSpan().IndexOfAnyInRange('1', '9') < 0 ? text.TrimStart('-') : text;
}
