using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Network;

namespace WitnessMark.Bench;

/// <summary>The named alternative: MathNet.Numerics' LevenbergMarquardtMinimizer on dense matrices, fed with our own equations and start.</summary>
sealed class DenseSurvey
{
    readonly Solver _solver;
    readonly IObjectiveModel _model;
    readonly Vector<double> _start;

    public DenseSurvey(Sample sample)
    {
        _solver = new Solver(sample);
        var rows = _solver.Equations.Rows.Length;
        var observed = Vector<double>.Build.Dense(rows);
        _start = Vector<double>.Build.DenseOfArray(Start.From(_solver, CancellationToken.None)[0]);
        _model = ObjectiveFunction.NonlinearModel((p, _) => Residuals(p), (p, _) => Derivatives(p), observed, observed, Vector<double>.Build.DenseOfArray(_solver.Weights));
    }

    public double[] Solve() => new LevenbergMarquardtMinimizer(gradientTolerance: 1e-12, stepTolerance: 1e-14, functionTolerance: 1e-14).FindMinimum(_model, _start).MinimizingPoint.ToArray();

    public double Distance(double[] x, string a, string b) => _solver.Layout.Place(_solver.Layout.IndexOf(a), x).DistanceTo(_solver.Layout.Place(_solver.Layout.IndexOf(b), x));

    Vector<double> Residuals(Vector<double> p)
    {
        var f = new double[_solver.Weights.Length];
        _solver.Equations.Evaluate(p.AsArray(), f);
        return Vector<double>.Build.Dense(f);
    }

    Matrix<double> Derivatives(Vector<double> p)
    {
        var jacobian = _solver.Equations.Jacobian;
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
