namespace WitnessMark.DrawingOffice.Survey.Solid.Network;

/// <summary>
/// Fits one feature to the others as they stand, over its own few unknowns: damped least squares from several guesses. Serves to place
/// a feature without a sketch, to find the tilt of a set-up, and to look for a second place that fits as well.
/// </summary>
sealed class LocalFit(SolidSolver solver)
{
    /// <summary>Cause: a fit of seven unknowns that needs more is in a valley not worth following.</summary>
    const int MostSteps = 40;

    readonly SolidLayout _layout = solver.Layout;
    readonly List<int>[] _rowsOf = RowsOf(solver);

    /// <summary>Equations that lean on the feature.</summary>
    public IReadOnlyList<int> Rows(int feature) => _rowsOf[feature];

    /// <summary>Those that lean on it and on placed features only.</summary>
    public List<int> Ties(int feature, Func<int, bool> placed, Func<int, bool> framed) =>
        [.. _rowsOf[feature].Where(r => Array.TrueForAll(solver.Named(r), f => f == feature || placed(f)) && (solver.Equations.Rows[r] is not { Form: Form.OnFace } o || framed(o.Spot)))];

    /// <summary>Brings the feature's unknowns in x to the nearest minimum of the rows; returns the weighted sum of squares.</summary>
    /// <param name="most">No row weighs more than this, so that exact conditions do not wall in a poor guess.</param>
    public double Settle(int feature, double[] x, IReadOnlyList<int> rows, double[] weights, double most)
    {
        var (first, n) = (_layout.First(feature), _layout.Unknowns(feature));
        var (normal, gradient) = (new double[n, n], new double[n]);
        var (damping, sum) = (1e-3, Sum(x, rows, weights, most));
        for (var step = 0; step < MostSteps && damping < 1e12; step++)
        {
            Assemble(x, rows, weights, most, first, normal, gradient);
            var change = Solve(normal, gradient, damping);
            var before = x[first..(first + n)];
            for (var u = 0; u < n; u++) x[first + u] += change[u];
            var trial = Sum(x, rows, weights, most);
            if (!(trial < sum))
            {
                before.CopyTo(x, first);
                damping *= 10;
                continue;
            }
            var done = sum - trial <= 1e-12 * sum;
            (sum, damping) = (trial, Math.Max(1e-12, damping / 10));
            if (done) break;
        }
        if (_layout.DirectionAt(feature) is >= 0 and var at) SolidLayout.Write(at, x, SolidLayout.Read(at, x).Unit * _layout.Lever);
        return sum;
    }

    public double Sum(double[] x, IReadOnlyList<int> rows, double[] weights, double most = double.PositiveInfinity)
    {
        double sum = 0;
        foreach (var r in rows)
        {
            if (weights[r] == 0) continue;
            var f = solver.Equations.Residual(r, x);
            sum += Math.Min(weights[r], most) * f * f;
        }
        return sum;
    }

    void Assemble(double[] x, IReadOnlyList<int> rows, double[] weights, double most, int first, double[,] normal, double[] gradient)
    {
        var n = gradient.Length;
        Array.Clear(normal);
        Array.Clear(gradient);
        Span<double> own = stackalloc double[n];
        foreach (var r in rows)
        {
            var w = Math.Min(weights[r], most);
            if (w == 0) continue;
            var f = solver.Equations.Linearise(r, x);
            own.Clear();
            var columns = solver.Jacobian.ColumnsOf(r);
            var values = solver.Jacobian.ValuesOf(r);
            for (var k = 0; k < columns.Length; k++)
                if (columns[k] >= first && columns[k] < first + n) own[columns[k] - first] = values[k];
            for (var i = 0; i < n; i++)
            {
                gradient[i] -= w * f * own[i];
                for (var k = 0; k <= i; k++) normal[i, k] += w * own[i] * own[k];
            }
        }
    }

    /// <summary>(N + damping · diagonal) step = gradient by Cholesky; unknowns that no row touches stay.</summary>
    static double[] Solve(double[,] normal, double[] gradient, double damping)
    {
        var n = gradient.Length;
        var (l, y) = (new double[n, n], (double[])gradient.Clone());
        double stiffest = 1e-300;
        for (var i = 0; i < n; i++) stiffest = Math.Max(stiffest, normal[i, i]);
        for (var i = 0; i < n; i++)
        {
            for (var k = 0; k <= i; k++)
            {
                var v = normal[i, k];
                if (i == k) v += damping * Math.Max(v, 1e-9 * stiffest) + 1e-12 * stiffest;
                for (var j = 0; j < k; j++) v -= l[i, j] * l[k, j];
                l[i, k] = i == k ? Math.Sqrt(Math.Max(v, 1e-14 * stiffest)) : v / l[k, k];
            }
            for (var j = 0; j < i; j++) y[i] -= l[i, j] * y[j];
            y[i] /= l[i, i];
        }
        for (var i = n - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < n; j++) y[i] -= l[j, i] * y[j];
            y[i] /= l[i, i];
        }
        return y;
    }

    static List<int>[] RowsOf(SolidSolver solver)
    {
        var rows = new List<int>[solver.Layout.Features.Length];
        for (var i = 0; i < rows.Length; i++) rows[i] = [];
        for (var r = 0; r < solver.Equations.Rows.Length; r++)
            foreach (var f in solver.Named(r)) rows[f].Add(r);
        return rows;
    }
}
