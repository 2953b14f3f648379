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

    /// <summary>
    /// Distance of every pair of places, in the features' order; null where it is free. Two columns of Q serve all pairs of one
    /// feature, so that a thousand features take a second and not a minute.
    /// </summary>
    public static IEnumerable<(int A, int B, Uncertain? Distance)> Distances(Solver solver, Fit fit)
    {
        var layout = solver.Layout;
        var places = Enumerable.Range(0, layout.Features.Length).Where(layout.HasPlace).ToArray();
        for (var i = 0; i < places.Length - 1; i++)
        {
            var a = layout.First(places[i]);
            var (qx, qy) = (solver.Cofactors(fit, [a], [1]), solver.Cofactors(fit, [a + 1], [1]));
            for (var k = i + 1; k < places.Length; k++)
            {
                var b = layout.First(places[k]);
                var between = layout.Place(places[k], fit.X) - layout.Place(places[i], fit.X);
                var u = between.Unit;
                if (Solver.Moves(fit, [a, a + 1, b, b + 1], [-u.X, -u.Y, u.X, u.Y]))
                {
                    yield return (places[i], places[k], null);
                    continue;
                }
                double Along(double xx, double xy, double yx, double yy) => u.X * (xx * u.X + xy * u.Y) + u.Y * (yx * u.X + yy * u.Y);
                var own = Along(qx[a], qx[a + 1], qy[a], qy[a + 1]);
                var shared = Along(qx[b], qx[b + 1], qy[b], qy[b + 1]);
                var cross = solver.Cofactor(fit, b, b + 1);
                var other = Along(solver.Cofactor(fit, b, b), cross, cross, solver.Cofactor(fit, b + 1, b + 1));
                yield return (places[i], places[k], new Uncertain(between.Length, Math.Sqrt(Math.Max(0, own - 2 * shared + other))));
            }
        }
    }

    /// <summary>One unknown by itself: a size, or a slot's length.</summary>
    public static Uncertain? Unknown(Adjustment solver, Fit fit, int unknown)
    {
        ReadOnlySpan<int> columns = [unknown];
        ReadOnlySpan<double> rates = [1];
        if (Adjustment.Moves(fit, columns, rates)) return null;
        return new Uncertain(fit.X[unknown], Math.Sqrt(solver.Cofactor(fit, unknown, unknown)));
    }

    /// <summary>
    /// Standard ellipse of a place under inner constraints: S Q Sᵀ with S = I − Σ b bᵀ over the datum motions b, and the free
    /// motions taken out in the same way (their ± would be without bound).
    /// </summary>
    public static Func<int, Ellipse> Ellipses(Solver solver, Fit fit)
    {
        var entry = InnerCovariance(solver, fit);
        return first => Axes(entry(first, first), entry(first, first + 1), entry(first + 1, first + 1));
    }

    /// <summary>Entries, mm², of S Q Sᵀ for two unknowns of one feature.</summary>
    /// <param name="keepers">What tells each of the motions b apart from the others, c with cᵀb = 1 for its own and 0 for the rest; the motions themselves where not given.</param>
    public static Func<int, int, double> InnerCovariance(Adjustment solver, Fit fit, double[][]? keepers = null)
    {
        double[][] b = [.. fit.Datum, .. fit.Free];
        var y = (keepers ?? b).Select(v => solver.Cofactors(fit, v)).ToArray();
        var g = (keepers ?? b).Select(v => y.Select(w => Orthonormal.Dot(v, w)).ToArray()).ToArray();
        return (u, v) =>
        {
            var e = solver.Cofactor(fit, u, v);
            for (var i = 0; i < b.Length; i++)
            {
                e -= b[i][u] * y[i][v] + y[i][u] * b[i][v];
                for (var k = 0; k < b.Length; k++) e += b[i][u] * g[i][k] * b[k][v];
            }
            return e;
        };
    }

    static Ellipse Axes(double xx, double xy, double yy)
    {
        var mean = (xx + yy) / 2;
        var spread = Math.Sqrt((xx - yy) * (xx - yy) / 4 + xy * xy);
        return new Ellipse(Math.Sqrt(Math.Max(0, mean + spread)), Math.Sqrt(Math.Max(0, mean - spread)), 0.5 * Math.Atan2(2 * xy, xx - yy));
    }
}
