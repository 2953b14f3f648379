using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// The equations of one survey with the workspace to solve them again and again: the pattern is analysed once, readings are
/// left out by weight 0. Not for use from two threads at once.
/// </summary>
sealed class Solver
{
    readonly NormalMatrix _normal;
    readonly int[][] _places;
    Fit? _loaded;
    SelectedInverse? _inverse;

    public Solver(Sample sample)
    {
        Sample = sample;
        Layout = new Layout(sample, Observations.Lever(sample));
        Equations = new Equations(Layout, Observations.Of(sample, Layout));
        Weights = [.. Equations.Rows.Select(r => 1 / (r.Sigma * r.Sigma))];
        _normal = new NormalMatrix(Equations.Jacobian, Layout.BlockOf);
        _places = [.. Equations.Rows.Select(o => Layout.PlacesIn(o).ToArray())];
    }

    public Sample Sample { get; }

    public Layout Layout { get; }

    public Equations Equations { get; }

    /// <summary>1/σ² of every row.</summary>
    public double[] Weights { get; }

    /// <summary>The features with a place that a row leans on.</summary>
    public int[] Places(int row) => _places[row];

    public double Sigma(int row) => Equations.Rows[row].Sigma;

    /// <summary>Exact conditions and what follows from the features themselves are never accused.</summary>
    public bool IsTestable(int row) => Equations.Rows[row] is { Reading: >= 0 } o && !Sample.Readings[o.Reading].Exact;

    /// <summary>The weights with the rows of some readings left out.</summary>
    public double[] Without(IReadOnlySet<int> readings)
    {
        var weights = (double[])Weights.Clone();
        for (var r = 0; r < weights.Length; r++)
            if (Equations.Rows[r].Reading >= 0 && readings.Contains(Equations.Rows[r].Reading)) weights[r] = 0;
        return weights;
    }

    /// <summary>Least squares from a start, no more: where it comes to rest and how.</summary>
    public Minimum Minimise(double[] start, double[] weights, CancellationToken stop)
    {
        if (Layout.Count == 0) return new Minimum([], 0, true, 0, 0, "nothing to adjust");
        _loaded = null;
        return TrustRegion.Minimise(Equations, _normal, start, weights, stop: stop);
    }

    public Fit Adjust(double[] start, double[] weights, CancellationToken stop) => Settle(Minimise(start, weights, stop), weights);

    /// <summary>From a minimum to what it says: free motions, and the equations made regular for the ±.</summary>
    public Fit Settle(Minimum minimum, double[] weights)
    {
        _loaded = null;
        var convergence = new Convergence(minimum.Converged, minimum.Iterations, minimum.LastStep, minimum.Words);
        var x = minimum.X;
        if (Layout.Count == 0) return new Fit(x, weights, minimum.SumOfSquares, convergence, [], [], []);
        Equations.Linearise(x, new double[weights.Length]);
        var datum = Orthonormal.Of(Layout.DatumMotions(x, Centre(x)));
        var free = FreeMotions.Of(Equations.Jacobian, _normal, weights, datum);
        _normal.Assemble(weights);
        double stiffest = 1;
        for (var u = 0; u < Layout.Count; u++) stiffest = Math.Max(stiffest, _normal.Diagonal(u));
        var held = new double[Layout.Count];
        foreach (var u in Pins.Choose([.. datum, .. free])) held[u] = stiffest;
        if (!Stiffened(held)) convergence = convergence with { Converged = false, Words = "the readings contradict one another so far that no ± can be given" };
        return new Fit(x, weights, minimum.SumOfSquares, convergence, free, datum, held);
    }

    /// <summary>
    /// Makes sure that the assembled equations can be factored. Where rounding makes them indefinite (conditions that cannot all hold),
    /// every unknown is stiffened by a growing share of its own diagonal, and false says that the ± are worth nothing.
    /// </summary>
    bool Stiffened(double[] held)
    {
        if (_normal.Factor(held)) return true;
        for (var share = 1e-14; ; share *= 100)
        {
            for (var u = 0; u < held.Length; u++) held[u] += share * (_normal.Diagonal(u) + 1);
            if (_normal.Factor(held)) return false;
        }
    }

    /// <summary>gᵀQg: the variance, mm², of a quantity with the derivatives g. Meaningless where a free motion changes it (see <see cref="Moves"/>).</summary>
    public double Variance(Fit fit, ReadOnlySpan<int> columns, ReadOnlySpan<double> values)
    {
        Load(fit);
        return _normal.Quadratic(columns, values);
    }

    /// <summary>One entry of Q, for two unknowns of one feature.</summary>
    public double Cofactor(Fit fit, int u, int v) => Inverse(fit).Entry(u, v);

    /// <summary>Variance of what one row computes.</summary>
    public double VarianceOfRow(Fit fit, int row) => Inverse(fit).Quadratic(Equations.Jacobian.ColumnsOf(row), Equations.Jacobian.ValuesOf(row));

    /// <summary>The part of Q that belongs to unknowns of one row or one feature.</summary>
    SelectedInverse Inverse(Fit fit)
    {
        Load(fit);
        return _inverse ??= _normal.Inverse();
    }

    /// <summary>Q g, for covariances of one quantity with many.</summary>
    public double[] Cofactors(Fit fit, ReadOnlySpan<int> columns, ReadOnlySpan<double> values)
    {
        Load(fit);
        var (g, q) = (new double[Layout.Count], new double[Layout.Count]);
        for (var k = 0; k < columns.Length; k++) g[columns[k]] += values[k];
        _normal.Solve(g, q);
        return q;
    }

    /// <summary>Q v for a full vector.</summary>
    public double[] Cofactors(Fit fit, double[] v)
    {
        Load(fit);
        var q = new double[Layout.Count];
        _normal.Solve(v, q);
        return q;
    }

    /// <summary>True when a free motion changes a quantity with these derivatives.</summary>
    public static bool Moves(Fit fit, ReadOnlySpan<int> columns, ReadOnlySpan<double> values)
    {
        double length = 0;
        foreach (var v in values) length += v * v;
        foreach (var motion in fit.Free)
        {
            double change = 0;
            for (var k = 0; k < columns.Length; k++) change += values[k] * motion[columns[k]];
            // Cause: free motions are found to about 1e-6 of their length.
            if (change * change > 1e-10 * length) return true;
        }
        return false;
    }

    /// <summary>Middle of all places: the datum turns about it.</summary>
    Vec2 Centre(ReadOnlySpan<double> x)
    {
        var (sum, count) = (Vec2.Zero, 0);
        for (var i = 0; i < Layout.Features.Length; i++)
        {
            if (!Layout.HasPlace(i)) continue;
            sum += Layout.Place(i, x);
            count++;
        }
        return count == 0 ? sum : sum / count;
    }

    /// <summary>Bring the rows and the factor to this fit, unless they are there already.</summary>
    public void Load(Fit fit)
    {
        if (ReferenceEquals(_loaded, fit)) return;
        Equations.Linearise(fit.X, new double[fit.Weights.Length]);
        _normal.Assemble(fit.Weights);
        if (!_normal.Factor(fit.Held)) throw new InvalidOperationException("the held normal matrix must be positive definite");
        (_loaded, _inverse) = (fit, null);
    }
}
