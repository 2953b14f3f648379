using BenchmarkDotNet.Attributes;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.Bench;

/// <summary>
/// Futures of a large plan with person, helper, bays, benches, supplies and cures, on two threads, from the plan to the last
/// future; the alternative is <see cref="PlainFutures"/>, a hundredth as many on one thread.
/// </summary>
[MemoryDiagnoser]
public class FuturesBench
{
    [Params(500, 1000, 2000)]
    public int Jobs { get; set; }

    [Params(5000, 10_000)]
    public int Futures { get; set; }

    [Benchmark]
    public double Ours() => OnTwoThreads(LargePlan.Of(Jobs, false), Futures);

    [Benchmark]
    public double OursWithMoney() => OnTwoThreads(LargePlan.Of(Jobs, true), Futures);

    [Benchmark(Baseline = true)]
    public double PlainlyAHundredthOfThem()
    {
        var plain = new PlainFutures(LargePlan.Of(Jobs, false));
        var chance = new Chance(1);
        return Enumerable.Range(0, Futures / 100).Average(_ => plain.Finish(chance));
    }

    static double OnTwoThreads(PlanInput plan, int futures)
    {
        var run = Simulation.Of(plan, 1, futures);
        Course[] workers = [run.Worker(), run.Worker()];
        Parallel.For(0, 2, w => run.Run(workers[w], w * futures / 2, futures / 2));
        return run.Courses.Finish[0];
    }
}
