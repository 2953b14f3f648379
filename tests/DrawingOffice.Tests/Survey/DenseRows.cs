using MathNet.Numerics.LinearAlgebra;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Network;

namespace WitnessMark.DrawingOffice.Tests.Survey;

/// <summary>The equations of a survey at x as dense matrices: readings divided by their ±, and the exact conditions apart and unweighted.</summary>
sealed record DenseRows(Matrix<double> Weighted, Vector<double> Misfit, Matrix<double> Conditions, Vector<double> Breach)
{
    public static DenseRows Of(Plan plan) => Of(plan.Solver, plan.Fit.X);

    public static DenseRows Of(Solver solver, double[] x)
    {
        var f = new double[solver.Weights.Length];
        solver.Equations.Linearise(x, f);
        var readings = Enumerable.Range(0, f.Length).Where(solver.IsTestable).ToArray();
        var conditions = Enumerable.Range(0, f.Length).Except(readings).ToArray();
        return new DenseRows(
            Rows(solver, readings, solver.Sigma), Vector<double>.Build.Dense([.. readings.Select(r => f[r] / solver.Sigma(r))]),
            Rows(solver, conditions, _ => 1), Vector<double>.Build.Dense([.. conditions.Select(r => f[r])]));
    }

    static Matrix<double> Rows(Solver solver, int[] rows, Func<int, double> sigma)
    {
        var dense = Matrix<double>.Build.Dense(rows.Length, solver.Layout.Count);
        for (var i = 0; i < rows.Length; i++)
        {
            var columns = solver.Equations.Jacobian.ColumnsOf(rows[i]);
            for (var k = 0; k < columns.Length; k++) dense[i, columns[k]] = solver.Equations.Jacobian.ValuesOf(rows[i])[k] / sigma(rows[i]);
        }
        return dense;
    }
}
