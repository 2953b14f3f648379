using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>Derived quantities in space with their ± from the full covariance; null where a free motion changes them.</summary>
static class SolidQuantities
{
    public static Uncertain? Of(SolidSolver solver, Fit fit, SolidObserved quantity)
    {
        var (value, columns, rates) = Linear(solver, fit, quantity);
        if (!double.IsFinite(value) || Adjustment.Moves(fit, columns, rates)) return null;
        return new Uncertain(value, Math.Sqrt(solver.Variance(fit, columns, rates)));
    }

    /// <summary>Value and derivatives of what a reading of this kind would give.</summary>
    public static (double Value, int[] Columns, double[] Rates) Linear(SolidSolver solver, Fit fit, SolidObserved quantity)
    {
        var columns = solver.Equations.Columns(quantity);
        var rates = new double[columns.Length];
        var value = solver.Equations.Compute(quantity, fit.X, new Derivatives(columns, rates));
        return (value, columns, rates);
    }

    public static SolidObserved Distance(int a, int b) => new(Form.Gap, a, b, -1, 0, 0, 0, 1, -1, 0, false);

    /// <summary>Distance of every pair of places; null where it is free. Three columns of Q serve all pairs of one feature.</summary>
    public static IEnumerable<(int A, int B, Uncertain? Distance)> Distances(SolidSolver solver, Fit fit)
    {
        var layout = solver.Layout;
        var places = Enumerable.Range(0, layout.Features.Length).Where(layout.HasPlace).ToArray();
        for (var i = 0; i < places.Length - 1; i++)
        {
            var a = layout.First(places[i]);
            double[][] q = [solver.Cofactors(fit, [a], [1]), solver.Cofactors(fit, [a + 1], [1]), solver.Cofactors(fit, [a + 2], [1])];
            for (var k = i + 1; k < places.Length; k++)
            {
                var b = layout.First(places[k]);
                var between = layout.Place(places[k], fit.X) - layout.Place(places[i], fit.X);
                var u = between.Unit;
                double[] along = [u.X, u.Y, u.Z];
                if (Adjustment.Moves(fit, [a, a + 1, a + 2, b, b + 1, b + 2], [-u.X, -u.Y, -u.Z, u.X, u.Y, u.Z]))
                {
                    yield return (places[i], places[k], null);
                    continue;
                }
                double variance = 0;
                for (var m = 0; m < 3; m++)
                    for (var n = 0; n < 3; n++) variance += along[m] * along[n] * (q[m][a + n] - 2 * q[m][b + n] + solver.Cofactor(fit, b + m, b + n));
                yield return (places[i], places[k], new Uncertain(between.Length, Math.Sqrt(Math.Max(0, variance))));
            }
        }
    }

    /// <summary>
    /// The datum told by the places of corners and holes alone, so that neither faces nor set-ups share in it and the ± of a place does not
    /// hang on where the sketch lay: c = P D (DᵀPD)⁻¹ for the datum motions D, P keeping places only, cleared of the free motions.
    /// Where the places cannot tell six motions, all unknowns share.
    /// </summary>
    public static double[][] Keepers(SolidSolver solver, Fit fit)
    {
        double[][] motions = [.. fit.Datum, .. fit.Free];
        var (d, layout) = (fit.Datum.Length, solver.Layout);
        int[] places = [.. Enumerable.Range(0, layout.Features.Length).Where(layout.HasPlace).SelectMany(f => Enumerable.Range(layout.First(f), 3))];
        var normal = new double[d, d];
        for (var i = 0; i < d; i++)
            for (var k = 0; k < d; k++) normal[i, k] = places.Sum(u => fit.Datum[i][u] * fit.Datum[k][u]);
        var (values, vectors) = SymmetricEigen.Of(normal);
        if (d == 0 || values[0] < 1e-9 * values[^1]) return motions;
        return [.. Enumerable.Range(0, motions.Length).Select(m =>
        {
            if (m >= d) return motions[m];
            var c = new double[layout.Count];
            for (var k = 0; k < d; k++)
            {
                double inverse = 0;
                for (var e = 0; e < d; e++) inverse += vectors[m, e] * vectors[k, e] / values[e];
                foreach (var u in places) c[u] += inverse * fit.Datum[k][u];
            }
            foreach (var free in fit.Free)
            {
                var along = Orthonormal.Dot(free, c);
                for (var u = 0; u < c.Length; u++) c[u] -= along * free[u];
            }
            return c;
        })];
    }

    /// <summary>Half-axes of a covariance of three unknowns side by side, longest first.</summary>
    public static Ellipsoid Ellipsoid(Func<int, int, double> entry, int first)
    {
        var block = new double[3, 3];
        for (var i = 0; i < 3; i++)
            for (var k = 0; k < 3; k++) block[i, k] = entry(first + i, first + k);
        var (values, vectors) = SymmetricEigen.Of(block);
        Vec3 Axis(int e) => Math.Sqrt(Math.Max(0, values[e])) * new Vec3(vectors[0, e], vectors[1, e], vectors[2, e]);
        return new Ellipsoid(Axis(2), Axis(1), Axis(0));
    }

    /// <summary>Largest standard uncertainty of a feature's direction under inner constraints, radians.</summary>
    public static double DirectionStd(SolidSolver solver, Fit fit, double[][] keepers, Func<int, int, double> entry, int feature)
    {
        var layout = solver.Layout;
        // The length of a direction's three unknowns is certain, so that the ellipsoid is a disc square to it.
        if (layout.DirectionAt(feature) is >= 0 and var at) return Ellipsoid(entry, at).Major.Length / layout.Lever;
        if (layout.IsCornered(feature)) return EdgeStd(solver, fit, keepers, feature);
        return layout.HasDirection(feature) ? DirectionStd(solver, fit, keepers, entry, layout.On(feature)) : 0;
    }

    static double EdgeStd(SolidSolver solver, Fit fit, double[][] keepers, int edge)
    {
        var layout = solver.Layout;
        var (a, b) = layout.Corners(edge);
        var along = layout.Direction(edge, fit.X);
        var across = (Math.Abs(along.X) < 0.6 ? new Vec3(1, 0, 0) : new Vec3(0, 1, 0)).Cross(along).Unit;
        var length = layout.Place(a, fit.X).DistanceTo(layout.Place(b, fit.X));
        double[][] free = [.. fit.Datum, .. fit.Free];
        double[] Inner(Vec3 way)
        {
            var g = new double[layout.Count];
            SolidLayout.Write(layout.First(a), g, -way / length);
            SolidLayout.Write(layout.First(b), g, way / length);
            foreach (var (keeper, dot) in free.Select((m, k) => (keepers[k], Orthonormal.Dot(m, g))).ToList())
                for (var u = 0; u < g.Length; u++) g[u] -= dot * keeper[u];
            return g;
        }
        var (one, two) = (Inner(across), Inner(along.Cross(across)));
        var (q1, q2) = (solver.Cofactors(fit, one), solver.Cofactors(fit, two));
        var (xx, xy, yy) = (Orthonormal.Dot(one, q1), Orthonormal.Dot(one, q2), Orthonormal.Dot(two, q2));
        return Math.Sqrt(Math.Max(0, (xx + yy) / 2 + Math.Sqrt((xx - yy) * (xx - yy) / 4 + xy * xy)));
    }
}
