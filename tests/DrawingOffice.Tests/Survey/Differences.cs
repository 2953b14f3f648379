using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Tests.Survey;

/// <summary>Derivatives of observation equations against central differences.</summary>
static class Differences
{
    /// <param name="off">Largest disagreement borne.</param>
    /// <param name="told">What a row is, for the message.</param>
    public static void Agree(IResiduals equations, double[] x, double off, Func<int, string> told)
    {
        var rows = equations.Jacobian.Rows;
        equations.Linearise(x, new double[rows]);
        var (above, below) = (new double[rows], new double[rows]);
        for (var u = 0; u < x.Length; u++)
        {
            const double h = 1e-4;
            var keep = x[u];
            x[u] = keep + h;
            equations.Evaluate(x, above);
            x[u] = keep - h;
            equations.Evaluate(x, below);
            x[u] = keep;
            for (var r = 0; r < rows; r++)
            {
                var k = equations.Jacobian.ColumnsOf(r).IndexOf(u);
                var exact = k < 0 ? 0 : equations.Jacobian.ValuesOf(r)[k];
                var difference = (above[r] - below[r]) / (2 * h);
                Assert.True(Math.Abs(exact - difference) < off, $"{told(r)} by unknown {u}: {exact}, differences {difference}");
            }
        }
    }
}
