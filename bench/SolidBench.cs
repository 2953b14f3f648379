using BenchmarkDotNet.Attributes;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.DrawingOffice.Survey.Solid.Network;
using WitnessMark.DrawingOffice.Tests.Survey.Solid;
using WitnessMark.Maths;

namespace WitnessMark.Bench;

/// <summary>Solve, covariance and snooping of a weldment of 59 features and some 280 readings in four set-ups, against MathNet.Numerics' dense Levenberg-Marquardt on the same equations and start (solving alone).</summary>
[MemoryDiagnoser]
public class SolidBench
{
    readonly SolidSample _sample = Weldments.Measured(new Chance(1));
    SolidSolver _solver = null!;
    DenseSurvey _dense = null!;

    [GlobalSetup]
    public void Prepare()
    {
        _solver = new SolidSolver(_sample);
        _dense = new DenseSurvey(_solver.Equations, _solver.Weights, _solver.Minimise(SolidStart.From(_solver, default), _solver.Coarse(), default).X);
        var (plan, x) = (Ours(), MathNetDense());
        double worst = 0;
        foreach (var d in plan.Distances())
        {
            var (a, b) = (_solver.Layout.IndexOf(d.From), _solver.Layout.IndexOf(d.To));
            worst = Math.Max(worst, Math.Abs(_solver.Layout.Place(a, x).DistanceTo(_solver.Layout.Place(b, x)) - d.Distance) / d.Distance);
        }
        Console.WriteLine($"// {_sample.Features.Length} features, {_sample.Readings.Length} readings, {plan.Unknowns} unknowns, {plan.LooseFreedoms} loose, {plan.Doubts.Indices.Length} doubtful; largest relative difference of a distance {worst:0.0e0}");
        var before = Environment.CpuUsage.TotalTime;
        for (var i = 0; i < 100; i++) Ours();
        Console.WriteLine($"// processor time of one solve {(Environment.CpuUsage.TotalTime - before).TotalMilliseconds / 100:0.0} ms");
        before = Environment.CpuUsage.TotalTime;
        for (var i = 0; i < 5; i++) SolidAdjust.Solve(_sample);
        Console.WriteLine($"// with the search for second shapes {(Environment.CpuUsage.TotalTime - before).TotalMilliseconds / 5:0.0} ms");
        Verdicts(300);
        if (!(worst < 1e-6)) throw new InvalidOperationException("the alternative does not give the same plan");
    }

    /// <summary>How often the verdicts are right on brackets of known truth: printed for docs/performance.md.</summary>
    static void Verdicts(int brackets)
    {
        var truth = Brackets.Shape();
        var (alarms, noticed, found, alone, outside, count) = (0, 0, 0, 0, 0, 0);
        double square = 0, angle = 0;
        for (var seed = 1; seed <= brackets; seed++)
        {
            var chance = new Chance((ulong)(9000 + seed));
            var sample = Brackets.Measured(chance, truth);
            var clean = SolidAdjust.Solve(sample, searchMirrors: false);
            if (!clean.Doubts.Indices.IsEmpty) alarms++;
            foreach (var d in clean.Distances())
            {
                var z = (d.Distance - truth.Places[d.From].DistanceTo(truth.Places[d.To])) / d.Std;
                (square, count, outside) = (square + z * z, count + 1, outside + (Math.Abs(z) > 2 ? 1 : 0));
            }
            var setting = clean.Quantity(SolidReadingKind.Angle, "A", "B")!.Value;
            angle += Math.Pow((setting.Value - (Math.PI / 2 - 0.09)) / setting.Std, 2);
            int[] checkedReadings = [.. clean.Readings.Where(r => r.SmallestDetectable is not null && sample.Readings[r.Index].Sigma > 0).Select(r => r.Index)];
            var bad = checkedReadings[chance.Below(checkedReadings.Length)];
            var doubts = SolidAdjust.Solve(Brackets.WithError(sample, bad, clean.Readings[bad].SmallestDetectable!.Value), searchMirrors: false).Doubts;
            if (!doubts.Indices.IsEmpty) noticed++;
            if (doubts.Indices.Contains(bad)) found++;
            if (doubts.Indices.SequenceEqual([bad])) alone++;
        }
        Console.WriteLine($"// {brackets} brackets: clean ones accused {alarms}; error of the detectable size noticed {noticed}, its reading among the doubtful {found}, alone {alone}; mean square of (error / ±) {square / count:0.000}, beyond 2 of them {100.0 * outside / count:0.0} %; setting angle {angle / brackets:0.000}");
    }

    [Benchmark]
    public SolidPlan Ours() => SolidAdjust.Solve(_sample, searchMirrors: false);

    [Benchmark(Baseline = true)]
    public double[] MathNetDense() => _dense.Solve();
}
