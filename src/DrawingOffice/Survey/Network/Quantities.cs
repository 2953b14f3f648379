using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>Derived quantities with their ± from the full covariance; null where a free motion changes them.</summary>
static class Quantities
{
    /// <summary>Value and ± of what a reading of this kind would give.</summary>
    public static Uncertain? Of(Solver solver, Fit fit, Observed quantity)
    {
        var (value, columns, rates) = Linear(solver, fit, quantity);
        if (Solver.Moves(fit, columns, rates)) return null;
        return new Uncertain(value, Math.Sqrt(solver.Variance(fit, columns, rates)));
    }

    /// <summary>Value and derivatives of what a reading of this kind would give.</summary>
    public static (double Value, int[] Columns, double[] Rates) Linear(Solver solver, Fit fit, Observed quantity)
    {
        var columns = solver.Equations.Columns(quantity);
        var rates = new double[columns.Length];
        var value = solver.Equations.Compute(quantity, fit.X, new Derivatives(columns, rates));
        return (value, columns, rates);
    }

    public static Observed Distance(int a, int b) => new(ReadingKind.CentreDistance, a, b, 0, 1, -1, 0);

    /// <summary>One unknown by itself: a size, or a slot's length.</summary>
    public static Uncertain? Unknown(Solver solver, Fit fit, int unknown)
    {
        ReadOnlySpan<int> columns = [unknown];
        ReadOnlySpan<double> rates = [1];
        if (Solver.Moves(fit, columns, rates)) return null;
        return new Uncertain(fit.X[unknown], Math.Sqrt(solver.Cofactor(fit, unknown, unknown)));
    }

    /// <summary>
    /// Standard ellipse of a place under inner constraints: S Q Sᵀ with S = I − Σ b bᵀ over the datum motions b, and the free
    /// motions taken out in the same way (their ± would be without bound).
    /// </summary>
    public static Func<int, Ellipse> Ellipses(Solver solver, Fit fit)
    {
        double[][] b = [.. fit.Datum, .. fit.Free];
        var y = b.Select(v => solver.Cofactors(fit, v)).ToArray();
        var g = b.Select(v => y.Select(w => Orthonormal.Dot(v, w)).ToArray()).ToArray();
        return first =>
        {
            double Entry(int u, int v)
            {
                var e = solver.Cofactor(fit, u, v);
                for (var i = 0; i < b.Length; i++)
                {
                    e -= b[i][u] * y[i][v] + y[i][u] * b[i][v];
                    for (var k = 0; k < b.Length; k++) e += b[i][u] * g[i][k] * b[k][v];
                }
                return e;
            }
            return Axes(Entry(first, first), Entry(first, first + 1), Entry(first + 1, first + 1));
        };
    }

    static Ellipse Axes(double xx, double xy, double yy)
    {
        var mean = (xx + yy) / 2;
        var spread = Math.Sqrt((xx - yy) * (xx - yy) / 4 + xy * xy);
        return new Ellipse(Math.Sqrt(Math.Max(0, mean + spread)), Math.Sqrt(Math.Max(0, mean - spread)), 0.5 * Math.Atan2(2 * xy, xx - yy));
    }
}
