using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Optimization;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.Bench;

/// <summary>The named alternative: MathNet.Numerics' LevenbergMarquardtMinimizer on dense matrices, fed with our own equations and start.</summary>
sealed class DenseSurvey
{
    readonly IResiduals _equations;
    readonly IObjectiveModel _model;
    readonly Vector<double> _start;

    public DenseSurvey(IResiduals equations, double[] weights, double[] start)
    {
        _equations = equations;
        _start = Vector<double>.Build.DenseOfArray(start);
        var observed = Vector<double>.Build.Dense(weights.Length);
        _model = ObjectiveFunction.NonlinearModel((p, _) => Residuals(p), (p, _) => Derivatives(p), observed, observed, Vector<double>.Build.DenseOfArray(weights));
    }

    public double[] Solve() => new LevenbergMarquardtMinimizer(gradientTolerance: 1e-12, stepTolerance: 1e-14, functionTolerance: 1e-14).FindMinimum(_model, _start).MinimizingPoint.ToArray();

    Vector<double> Residuals(Vector<double> p)
    {
        var f = new double[_equations.Jacobian.Rows];
        _equations.Evaluate(p.AsArray(), f);
        return Vector<double>.Build.Dense(f);
    }

    Matrix<double> Derivatives(Vector<double> p)
    {
        var jacobian = _equations.Jacobian;
        _equations.Linearise(p.AsArray(), new double[jacobian.Rows]);
        var dense = Matrix<double>.Build.Dense(jacobian.Rows, jacobian.Columns);
        for (var r = 0; r < jacobian.Rows; r++)
        {
            var columns = jacobian.ColumnsOf(r);
            for (var k = 0; k < columns.Length; k++) dense[r, columns[k]] = jacobian.ValuesOf(r)[k];
        }
        return dense;
    }
}
