using BenchmarkDotNet.Attributes;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.DrawingOffice.Tests.Survey;
using WitnessMark.Maths;

namespace WitnessMark.Bench;

/// <summary>Solve, covariance and snooping of 200 points and about 800 readings, against a dense Levenberg-Marquardt on the same equations.</summary>
[MemoryDiagnoser]
public class SurveyBench
{
    Sample _sample = null!;
    Solver _solver = null!;
    DenseSurvey _dense = null!;

    [GlobalSetup]
    public void Prepare()
    {
        _sample = Simulated.Plate(200, 3, new Chance(1));
        _solver = new Solver(_sample);
        _dense = new DenseSurvey(_solver.Equations, _solver.Weights, Start.From(_solver, default)[0]);
        Agree();
    }

    /// <summary>The two must give the same distances before their times may be compared.</summary>
    void Agree()
    {
        var plan = Adjust.Solve(_sample, searchMirrors: false);
        var x = _dense.Solve();
        double worst = 0;
        Vec2 Place(string id) => _solver.Layout.Place(_solver.Layout.IndexOf(id), x);
        foreach (var d in plan.Distances()) worst = Math.Max(worst, Math.Abs(Place(d.From).DistanceTo(Place(d.To)) - d.Distance) / d.Distance);
        Console.WriteLine($"// {_sample.Readings.Length} readings, {plan.Unknowns} unknowns, {plan.LooseFreedoms} loose; largest relative difference of a determined distance {worst:0.0e0}");
        if (worst > 1e-9) throw new InvalidOperationException("the alternative does not give the same plan");
    }

    [Benchmark]
    public Plan Ours() => Adjust.Solve(_sample, searchMirrors: false);

    [Benchmark(Baseline = true)]
    public double[] MathNetDense() => _dense.Solve();
}

/// <summary>1,000 points and about 4,000 readings.</summary>
public class LargeSurveyBench
{
    readonly Sample _sample = Simulated.Plate(1000, 3, new Chance(1));

    [Benchmark]
    public Plan Ours() => Adjust.Solve(_sample, searchMirrors: false);
}

/// <summary>What to read next at 100 points, over some 10,000 candidates.</summary>
public class NextBench
{
    readonly Plan _plan = Adjust.Solve(Simulated.Plate(100, 4, new Chance(1)), searchMirrors: false);

    [Benchmark]
    public NextAdvice Ours() => Next.Advise(_plan, 0.01);
}
