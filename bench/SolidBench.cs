using BenchmarkDotNet.Attributes;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
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
    Vector<double> _start = null!;

    [GlobalSetup]
    public void Prepare()
    {
        _solver = new SolidSolver(_sample);
        _start = Vector<double>.Build.DenseOfArray(_solver.Minimise(SolidStart.From(_solver, default), SolidStart.Coarse(_solver), default).X);
        var (plan, x) = (Ours(), MathNetDense());
        double worst = 0;
        foreach (var d in plan.Distances())
        {
            var (a, b) = (_solver.Layout.IndexOf(d.From), _solver.Layout.IndexOf(d.To));
            worst = Math.Max(worst, Math.Abs(_solver.Layout.Place(a, x).DistanceTo(_solver.Layout.Place(b, x)) - d.Distance) / d.Distance);
        }
        Console.WriteLine($"// {_sample.Features.Length} features, {_sample.Readings.Length} readings, {plan.Unknowns} unknowns, {plan.LooseFreedoms} loose, {plan.Doubts.Indices.Length} doubtful; largest relative difference of a distance {worst:0.0e0}");
        if (!(worst < 1e-6)) throw new InvalidOperationException("the alternative does not give the same plan");
    }

    [Benchmark]
    public SolidPlan Ours() => SolidAdjust.Solve(_sample, searchMirrors: false);

    [Benchmark(Baseline = true)]
    public double[] MathNetDense()
    {
        var observed = Vector<double>.Build.Dense(_solver.Weights.Length);
        var model = ObjectiveFunction.NonlinearModel((p, _) => Residuals(p), (p, _) => Derivatives(p), observed, observed, Vector<double>.Build.DenseOfArray(_solver.Weights));
        return new LevenbergMarquardtMinimizer(gradientTolerance: 1e-12, stepTolerance: 1e-14, functionTolerance: 1e-14).FindMinimum(model, _start).MinimizingPoint.ToArray();
    }

    Vector<double> Residuals(Vector<double> p)
    {
        var f = new double[_solver.Weights.Length];
        _solver.Equations.Evaluate(p.AsArray(), f);
        return Vector<double>.Build.Dense(f);
    }

    Matrix<double> Derivatives(Vector<double> p)
    {
        var jacobian = _solver.Jacobian;
        _solver.Equations.Linearise(p.AsArray(), new double[_solver.Weights.Length]);
        var dense = Matrix<double>.Build.Dense(jacobian.Rows, jacobian.Columns);
        for (var r = 0; r < jacobian.Rows; r++)
        {
            var columns = jacobian.ColumnsOf(r);
            for (var k = 0; k < columns.Length; k++) dense[r, columns[k]] = jacobian.ValuesOf(r)[k];
        }
        return dense;
    }
}
