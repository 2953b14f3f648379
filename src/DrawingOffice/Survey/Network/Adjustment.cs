using WitnessMark.DrawingOffice.Survey.Network.Wear;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>
/// The equations of one survey, flat or solid, with the workspace to solve them again and again: the pattern is analysed once,
/// readings are left out by weight 0. What the rows mean is the business of the survey that derives from it. Not for use from
/// two threads at once.
/// </summary>
abstract class Adjustment
{
    readonly IResiduals _model;
    readonly NormalMatrix _normal;
    int[]? _worn;
    Fit? _loaded;
    SelectedInverse? _inverse;

    /// <param name="model">Computed − observed of every row; all unknowns in mm (a turn as turn × lever).</param>
    /// <param name="blockOf">For each unknown the feature it belongs to, numbered from 0 without gaps.</param>
    /// <param name="weights">1/σ² of every row; 1/(σ² + scale²) of a row that wear bounds from one side.</param>
    protected Adjustment(IResiduals model, int[] blockOf, double[] weights)
    {
        (_model, Weights) = (model, weights);
        _normal = new NormalMatrix(model.Jacobian, blockOf);
    }

    public int Unknowns => _normal.Size;

    /// <summary>1/σ² of every row; for rows with wear only a first guess.</summary>
    public double[] Weights { get; }

    public SparseRows Jacobian => _model.Jacobian;

    /// <summary>Index of the reading that a row comes from; −1 for what follows from the features themselves.</summary>
    public abstract int ReadingOf(int row);

    /// <summary>What was observed.</summary>
    public abstract double ValueOf(int row);

    public abstract double Sigma(int row);

    /// <summary>Exact conditions and what follows from the features themselves are never accused.</summary>
    public abstract bool IsTestable(int row);

    /// <summary>Whether a row bounds from one side only; the default is that none does.</summary>
    public virtual RowWear WearOf(int row) => default;

    public bool HasWear => Worn.Length > 0;

    int[] Worn => _worn ??= [.. Enumerable.Range(0, Weights.Length).Where(r => WearOf(r).IsOneSided)];

    /// <summary>The part of a residual that speaks against a row: all of it, or only what lies on the side that wear cannot explain.</summary>
    public double Against(int row, double residual) => WearOf(row).Sign is var sign && (sign == 0 || sign * residual > 0) ? residual : 0;

    /// <summary>The motions of the whole part that no reading sees, at x.</summary>
    protected abstract double[][] DatumMotions(ReadOnlySpan<double> x);

    /// <summary>Computed − observed of every row.</summary>
    public void Evaluate(ReadOnlySpan<double> x, Span<double> residuals) => _model.Evaluate(x, residuals);

    /// <summary>The largest weight of any plain reading.</summary>
    public double Ordinary => Enumerable.Range(0, Weights.Length).Where(IsTestable).Select(r => Weights[r]).DefaultIfEmpty(1).Max();

    /// <summary>The weights with none above an ordinary reading's, so that exact conditions cannot wall in a poor start.</summary>
    public double[] Coarse()
    {
        var ordinary = Ordinary;
        return [.. Weights.Select(w => Math.Min(w, ordinary))];
    }

    /// <summary>
    /// The plan of a fit, or of the better one that the search for second shapes comes upon (a few times at most: each is strictly
    /// better).
    /// </summary>
    public TPlan Best<TPlan>(Fit fit, Func<Fit, TPlan> make, Func<TPlan, double[]?> betterStart, CancellationToken stop)
    {
        for (var round = 0; ; round++)
        {
            var plan = make(fit);
            if (betterStart(plan) is not { } start || round == 5) return plan;
            fit = Adjust(start, fit.Weights, stop);
        }
    }

    /// <summary>The weights with the rows of some readings left out.</summary>
    public double[] Without(IReadOnlySet<int> readings)
    {
        var weights = (double[])Weights.Clone();
        for (var r = 0; r < weights.Length; r++)
            if (ReadingOf(r) is >= 0 and var reading && readings.Contains(reading)) weights[r] = 0;
        return weights;
    }

    /// <summary>Least squares from a start, no more: where it comes to rest and how.</summary>
    /// <param name="shift">By row, what is added to what was read; null for nothing.</param>
    /// <param name="most">Steps after which it rests even if not settled: few will do for a start.</param>
    public Minimum Minimise(double[] start, double[] weights, CancellationToken stop, double[]? shift = null, int most = 200)
    {
        if (Unknowns == 0) return new Minimum([], 0, true, 0, 0, "nothing to adjust");
        _loaded = null;
        return TrustRegion.Minimise(shift is null ? _model : new ShiftedRows(_model, shift), _normal, start, weights, most, stop);
    }

    /// <param name="weights">0 leaves a row out; those of rows with wear are else found anew.</param>
    public Fit Adjust(double[] start, double[] weights, CancellationToken stop)
    {
        if (HasWear && Unknowns > 0 && Array.FindAll(Worn, r => weights[r] > 0) is { Length: > 0 } worn) return OneSided.Adjust(this, start, weights, worn, stop);
        return Settle(Minimise(start, weights, stop), weights);
    }

    /// <summary>From a minimum to what it says: free motions, and the equations made regular for the ±.</summary>
    public Fit Settle(Minimum minimum, double[] weights)
    {
        _loaded = null;
        var convergence = new Convergence(minimum.Converged, minimum.Iterations, minimum.LastStep, minimum.Words);
        var x = minimum.X;
        if (Unknowns == 0) return new Fit(x, weights, minimum.SumOfSquares, convergence, [], [], []);
        _model.Linearise(x, new double[weights.Length]);
        var datum = Orthonormal.Of(DatumMotions(x));
        var free = FreeMotions.Of(Jacobian, _normal, weights, datum);
        _normal.Assemble(weights);
        double stiffest = 1;
        for (var u = 0; u < Unknowns; u++) stiffest = Math.Max(stiffest, _normal.Diagonal(u));
        var held = new double[Unknowns];
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
    public double VarianceOfRow(Fit fit, int row) => Inverse(fit).Quadratic(Jacobian.ColumnsOf(row), Jacobian.ValuesOf(row));

    /// <summary>Variances of what some rows compute.</summary>
    public double[] Variances(Fit fit, int[] rows) => [.. rows.Select(r => VarianceOfRow(fit, r))];

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
        var (g, q) = (new double[Unknowns], new double[Unknowns]);
        for (var k = 0; k < columns.Length; k++) g[columns[k]] += values[k];
        _normal.Solve(g, q);
        return q;
    }

    /// <summary>Q v for a full vector.</summary>
    public double[] Cofactors(Fit fit, double[] v)
    {
        Load(fit);
        var q = new double[Unknowns];
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

    /// <summary>Bring the rows and the factor to this fit, unless they are there already.</summary>
    public void Load(Fit fit)
    {
        if (ReferenceEquals(_loaded, fit)) return;
        _model.Linearise(fit.X, new double[fit.Weights.Length]);
        _normal.Assemble(fit.Weights);
        if (!_normal.Factor(fit.Held)) throw new InvalidOperationException("the held normal matrix must be positive definite");
        (_loaded, _inverse) = (fit, null);
    }
}
