namespace WitnessMark.Maths.LeastSquares;

/// <summary>A set of residuals whose weighted sum of squares is to be made least.</summary>
public interface IResiduals
{
    /// <summary>Derivatives of the residuals; filled in by <see cref="Linearise"/>.</summary>
    SparseRows Jacobian { get; }

    /// <summary>Residuals at x; NaN or infinity where x is out of range, which makes the step be refused.</summary>
    void Evaluate(ReadOnlySpan<double> x, Span<double> residuals);

    /// <summary>Residuals and their derivatives at x.</summary>
    void Linearise(ReadOnlySpan<double> x, Span<double> residuals);
}

/// <summary>How a minimisation ended.</summary>
/// <param name="X">The unknowns at the end.</param>
/// <param name="SumOfSquares">Weighted.</param>
/// <param name="LastStep">Largest change of an unknown in the last step, in the unknown's own unit.</param>
public sealed record Minimum(double[] X, double SumOfSquares, bool Converged, int Iterations, double LastStep, string Words);

/// <summary>
/// Levenberg-Marquardt with Moré's scaling (running maximum of the diagonal) and Nielsen's rule for the damping.
/// </summary>
/// <remarks>
/// Damping makes the normal matrix regular, so problems with free motions (a plan that may shift and turn, a loose hole) are
/// solved as they are: free motions stay where they started. Sources: Moré 1978; Nielsen, IMM-REP-1999-05.
/// </remarks>
public static class TrustRegion
{
    /// <summary>
    /// Cause: below this the damping is lost in the rounding of the factor (a hundred terms of 1e-16), above it an unknown that
    /// only rough readings hold, beside exact conditions on it, hardly moves: weights 1e12 apart must still settle.
    /// </summary>
    const double LeastDamping = 1e-12;

    /// <summary>Cause: two or three steps are the rule; a valley that needs more than this is not worth its last digits.</summary>
    const int MostPolish = 50;

    /// <summary>Cause: a step that moves every residual by less than 1e-11 of the typical one is rounding.</summary>
    const double Seen = 1e-22;

    /// <summary>
    /// Cause: where an unknown is held to second order only (circles that touch), an undamped step leaves the valley; near a
    /// minimum rounding changes the sum of squares by less than a millionth, even beside exact conditions.
    /// </summary>
    const double Harmless = 1e-6;

    /// <summary>Cause: a smaller predicted gain cannot be seen in the sum of squares in double precision.</summary>
    const double Rounding = 1e-15;

    public static Minimum Minimise(IResiduals problem, NormalMatrix normal, ReadOnlySpan<double> start, ReadOnlySpan<double> weights, int mostIterations = 200, CancellationToken stop = default)
    {
        var n = normal.Size;
        var rows = problem.Jacobian;
        var x = start.ToArray();
        var trial = new double[n];
        var step = new double[n];
        var gradient = new double[n];
        var scale = new double[n];
        var added = new double[n];
        var f = new double[rows.Rows];
        var g = new double[rows.Rows];
        var (damping, growth) = (1e-4, 2.0);
        problem.Linearise(x, f);
        var sum = SumOfSquares(f, weights);
        if (!double.IsFinite(sum)) return new Minimum(x, sum, false, 0, double.NaN, "the start does not give finite residuals");

        var (fresh, lastStep) = (true, double.PositiveInfinity);
        for (var iteration = 1; iteration <= mostIterations; iteration++)
        {
            stop.ThrowIfCancellationRequested();
            if (fresh)
            {
                normal.Assemble(weights);
                Gradient(rows, f, weights, gradient);
                for (var u = 0; u < n; u++) scale[u] = Math.Max(scale[u], normal.Diagonal(u));
            }
            var floor = scale.Max() * 1e-12;
            for (var u = 0; u < n; u++) added[u] = damping * Math.Max(scale[u], floor) + double.Epsilon;
            if (!normal.Factor(added))
            {
                (damping, growth) = (damping * growth, growth * 2);
                if (damping > 1e30) return new Minimum(x, sum, false, iteration, lastStep, "the equations could not be factored");
                continue;
            }
            normal.Solve(gradient, step);
            double predicted = 0;
            for (var u = 0; u < n; u++)
            {
                trial[u] = x[u] + step[u];
                predicted += step[u] * (gradient[u] + added[u] * step[u]);
            }
            problem.Evaluate(trial, g);
            var trialSum = SumOfSquares(g, weights);
            lastStep = Largest(step);
            if (predicted <= Rounding * sum || sum == 0)
                return Polish(problem, normal, x, weights, iteration);

            var gain = (sum - trialSum) / predicted;
            fresh = double.IsFinite(trialSum) && gain > 1e-4;
            if (!fresh)
            {
                // A step that rounding alone refuses is the end, not a failure.
                if (predicted <= 1e-12 * sum && trialSum <= sum * (1 + 1e-12)) return Polish(problem, normal, x, weights, iteration);
                (damping, growth) = (damping * growth, growth * 2);
                if (damping > 1e30) return new Minimum(x, sum, false, iteration, lastStep, "no step lowers the sum of squares");
                continue;
            }
            (x, trial) = (trial, x);
            problem.Linearise(x, f);
            sum = SumOfSquares(f, weights);
            damping = Math.Max(LeastDamping, damping * Math.Max(1.0 / 3, 1 - Math.Pow(2 * gain - 1, 3)));
            if (gain > 0.9) damping = Math.Max(LeastDamping, damping * 0.1);
            growth = 2;
        }
        return new Minimum(x, sum, false, mostIterations, lastStep, $"not settled after {mostIterations} steps");
    }

    /// <summary>
    /// The last digits: steps with next to no damping, kept while each is shorter than the one before. The sum of squares can no
    /// longer judge them (it changes by less than its rounding); the length of the step can, measured by what the residuals feel
    /// of it (gradient · step), so that the rounding with which free motions wander does not count. A step that worsens the fit beyond
    /// rounding is not taken.
    /// </summary>
    static Minimum Polish(IResiduals problem, NormalMatrix normal, double[] x, ReadOnlySpan<double> weights, int iterations)
    {
        var n = normal.Size;
        var (f, gradient, step, trial, added) = (new double[weights.Length], new double[n], new double[n], new double[n], new double[n]);
        problem.Evaluate(x, f);
        var sum = SumOfSquares(f, weights);
        var (left, lastStep) = (double.PositiveInfinity, 0.0);
        for (var (k, damping) = (0, LeastDamping); k < MostPolish; k++)
        {
            problem.Linearise(x, f);
            normal.Assemble(weights);
            Gradient(problem.Jacobian, f, weights, gradient);
            double floor = 0;
            for (var u = 0; u < n; u++) floor = Math.Max(floor, normal.Diagonal(u));
            for (var u = 0; u < n; u++) added[u] = damping * Math.Max(normal.Diagonal(u), 1e-12 * floor) + double.Epsilon;
            if (!normal.Factor(added))
            {
                damping *= 10;
                continue;
            }
            normal.Solve(gradient, step);
            double squared = 0;
            for (var u = 0; u < n; u++) squared += gradient[u] * step[u];
            if (!(squared < 0.8 * left)) break;
            for (var u = 0; u < n; u++) trial[u] = x[u] + step[u];
            problem.Evaluate(trial, f);
            var trialSum = SumOfSquares(f, weights);
            if (!(trialSum <= sum + Harmless * (1 + sum))) break;
            (x, trial, sum) = (trial, x, trialSum);
            (left, lastStep, iterations) = (squared, Largest(step), iterations + 1);
            // Cause: a gain of several digits a step is the rule; the next would be rounding.
            if (squared <= Seen * sum) break;
        }
        problem.Linearise(x, f);
        return new Minimum(x, SumOfSquares(f, weights), true, iterations, lastStep, "settled");
    }

    /// <summary>−JᵀWf.</summary>
    public static void Gradient(SparseRows rows, ReadOnlySpan<double> f, ReadOnlySpan<double> weights, Span<double> gradient)
    {
        gradient.Clear();
        for (var r = 0; r < rows.Rows; r++)
            if (weights[r] != 0) rows.AddTo(gradient, r, -weights[r] * f[r]);
    }

    /// <summary>Σ w f².</summary>
    public static double SumOfSquares(ReadOnlySpan<double> f, ReadOnlySpan<double> weights)
    {
        double sum = 0;
        for (var r = 0; r < f.Length; r++)
            if (weights[r] != 0) sum += weights[r] * f[r] * f[r];
        return sum;
    }

    static double Largest(ReadOnlySpan<double> values)
    {
        double largest = 0;
        foreach (var v in values) largest = Math.Max(largest, Math.Abs(v));
        return largest;
    }
}
