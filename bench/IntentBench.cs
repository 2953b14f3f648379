using BenchmarkDotNet.Attributes;
using WitnessMark.DrawingOffice.Intent.Patterns;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Tests.Intent.Patterns;

namespace WitnessMark.Bench;

/// <summary>
/// What was meant by a plate of 40 features. The alternative only re-adjusts the whole survey once for each listed diameter and
/// each round centre distance near a measured one, which is the least that weighing hypotheses one by one would take; it finds
/// no set and no pattern.
/// </summary>
public class IntentBench
{
    readonly Plate _plate = Forty();
    Plan _plan = null!;

    /// <summary>The first seed whose plate has exactly 40 features: 4 corners, 4 edges, 32 holes.</summary>
    static Plate Forty()
    {
        for (ulong seed = 1; ; seed++)
            if (PlateShop.Patterned(seed, 30) is { Sample.Features.Length: 40 } plate) return plate;
    }

    [GlobalSetup]
    public void Measure() => _plan = Adjust.Solve(_plate.Sample, searchMirrors: false);

    [Benchmark]
    public IntentPlan Ours() => Intention.Find(_plan);

    [Benchmark(Baseline = true)]
    public double OneAdjustmentForEachHypothesis()
    {
        double sum = 0;
        var sample = _plate.Sample;
        foreach (var (kind, from, to, value) in Near())
        {
            var forced = sample with { Readings = sample.Readings.Add(new(sample.Readings.Length, kind, from, to, value, 1e-3)) };
            sum += Adjust.Solve(forced, searchMirrors: false).WeightedSumOfSquares;
        }
        return sum;
    }

    IEnumerable<(ReadingKind Kind, string From, string? To, double Value)> Near()
    {
        var holes = _plan.Believed.Features.Where(f => f.Kind == FeatureKind.Hole).ToList();
        foreach (var h in holes) yield return (ReadingKind.Diameter, h.Id, null, Math.Round(h.Size!.Value.Value * 2) / 2);
        for (var i = 0; i < holes.Count; i++)
            for (var k = i + 1; k < holes.Count; k++)
                if (_plan.Believed.Distance(holes[i].Id, holes[k].Id) is { } d && Math.Abs(d.Value - Math.Round(d.Value)) < 0.3)
                    yield return (ReadingKind.CentreDistance, holes[i].Id, holes[k].Id, Math.Round(d.Value));
    }

    /// <summary>Prints precision and recall over seeded plates of 12 to some 40 features, and what plates without any pattern give.</summary>
    public static void Score(ulong first, int count)
    {
        var (total, slips, worn, stated) = (DrawingOffice.Tests.Intent.Patterns.Score.Nothing, 0, 0, 0);
        for (var i = 0; i < count; i++)
        {
            var plate = PlateShop.Patterned(first + (ulong)i, 4 + i * 7 % 28);
            var plan = Adjust.Solve(plate.Sample, searchMirrors: false);
            var found = Intention.Find(plan);
            total += PlateJudge.Of(plate, found);
            (slips, worn) = (slips + (plan.Doubts.Indices.IsEmpty ? 0 : 1), worn + plate.Worn.Count);
            stated += found.Undecided.Length;
        }
        Console.WriteLine($"{count} plates, {slips} with a doubtful reading, {worn} worn features, {stated} values told as undecided");
        Console.WriteLine($"patterns: recall {total.Recall:0.000} ({total.Recovered} of {total.Meant}), precision {total.Precision:0.000} ({total.Right} of {total.Told})");
        Console.WriteLine($"values: recall {total.ValueRecall:0.000} ({total.ValuesRecovered} of {total.Values}), precision {total.ValuePrecision:0.000} ({total.ValuesRight} of {total.ValuesTold})");

        var (plates, findings) = (count / 3, 0);
        for (var i = 0; i < plates; i++)
        {
            var plate = PlateShop.Random(first + (ulong)i, 4 + i * 7 % 28);
            findings += Intention.Find(Adjust.Solve(plate.Sample, searchMirrors: false)).Findings.Count(f => f.Standing == Standing.Accepted);
        }
        Console.WriteLine($"without pattern: {findings} findings on {plates} plates");
    }
}
