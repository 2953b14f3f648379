namespace WitnessMark.DrawingOffice.Survey.Network.Wear;

/// <summary>
/// Adjusts readings of which some bound from one side only: read = made ± wear + error, wear exponential of stated mean, error
/// normal. Each such row is replaced by the normal reading that leaves mean and spread of what it computes as the true one
/// would, given all others; this is repeated until nothing changes (expectation propagation, Minka 2001).
/// </summary>
/// <remarks>
/// <para>Why not the most likely shape and the curvature there: the likelihood of one worn reading is highest where next to nothing has worn,
/// so that a part rusted all round would come out at its rusted size with a ± that does not hold its true one. Mean and spread
/// are what the ± of a plan must mean. With one worn row, or rows that do not lean on one another, the answer is exact to first order
/// of the equations; else mean and standard uncertainty are within a tenth of the latter (tested against integration).</para>
/// <para>The density is log-concave, so that no row ever gets a weight below 0 or above 1/σ².</para>
/// </remarks>
static class OneSided
{
    const int MostRounds = 200;

    /// <summary>Cause: a millionth of a row's ± is far below what a plan shows, and a hundred times above the rounding of leverages near 1.</summary>
    const double Settled = 1e-6;

    public static Fit Adjust(Adjustment solver, double[] start, double[] given, int[] worn, CancellationToken stop)
    {
        var (weights, shift) = ((double[])given.Clone(), new double[given.Length]);
        foreach (var r in worn) (weights[r], shift[r]) = Site.Alone(solver.Sigma(r), solver.WearOf(r));
        var fit = Shifted(solver.Settle(solver.Minimise(start, weights, stop, shift), weights), shift);
        var (last, share) = (double.PositiveInfinity, 1.0);
        for (var round = 0; last >= Settled && round < MostRounds; round++)
        {
            stop.ThrowIfCancellationRequested();
            (weights, shift, var change) = Renewed(solver, fit, worn, share);
            // Rows that lean on one another may swing; from then on each round goes half the way.
            if (round > 3 && change > last) share = 0.5;
            last = change;
            var minimum = solver.Minimise(fit.X, weights, stop, shift);
            // Which motions are free does not depend on the weights, so the ones found first serve until the end.
            fit = fit with { X = minimum.X, Weights = weights, Shift = shift, SumOfSquares = minimum.SumOfSquares };
        }
        var narrow = fit;
        (weights, shift) = Widening.Of(solver, narrow, worn);
        fit = Shifted(solver.Settle(solver.Minimise(fit.X, weights, stop, shift), weights), shift) with { Narrow = narrow };
        if (last >= Settled) fit = fit with { Convergence = fit.Convergence with { Converged = false, Words = $"what the worn readings say did not settle in {MostRounds} rounds" } };
        return Counted(solver, fit, worn);
    }

    static Fit Shifted(Fit fit, double[] shift) => fit with { Shift = shift };

    static (double[] Weights, double[] Shift, double Change) Renewed(Adjustment solver, Fit fit, int[] worn, double share)
    {
        var (weights, shift, change) = ((double[])fit.Weights.Clone(), (double[])fit.Shift!.Clone(), 0.0);
        foreach (var (r, others) in worn.Zip(Others.Of(solver, fit, worn)))
        {
            if (others.Foretold is not { } foretold) continue;
            var site = Site.Given(foretold, others.Variance, solver.Sigma(r), solver.WearOf(r));
            var weight = (1 - share) * weights[r] + share * site.Weight;
            var moved = ((1 - share) * weights[r] * shift[r] + share * site.Weight * site.Shift) / weight;
            change = Math.Max(change, Math.Max(Math.Abs(weight / weights[r] - 1), Math.Abs(moved - shift[r]) * Math.Sqrt(weight)));
            (weights[r], shift[r]) = (weight, moved);
        }
        return (weights, shift, change);
    }

    /// <summary>Sum of squares and surplus readings, a worn row counting as far as it acts as a plain reading now.</summary>
    static Fit Counted(Adjustment solver, Fit fit, int[] worn)
    {
        solver.Load(fit);
        var residual = new double[fit.Weights.Length];
        solver.Evaluate(fit.X, residual);
        var isWorn = worn.ToHashSet();
        double sum = 0, lost = 0;
        for (var r = 0; r < residual.Length; r++)
        {
            if (!isWorn.Contains(r))
            {
                if (fit.Weights[r] != 0) sum += fit.Weights[r] * residual[r] * residual[r];
                continue;
            }
            var against = solver.Against(r, residual[r]) / solver.Sigma(r);
            sum += against * against;
            lost += (1 - fit.Weights[r] * solver.VarianceOfRow(fit, r)) * (1 - Share(solver, fit, r));
        }
        return fit with { SumOfSquares = sum, Lost = (int)Math.Round(lost) };
    }

    /// <summary>How far a row acts as a plain two-sided reading of its instrument: 0 not at all, 1 quite. 1 for sound rows.</summary>
    public static double Share(Adjustment solver, Fit fit, int row) =>
        solver.WearOf(row).IsOneSided ? Math.Min(1, fit.Weights[row] * solver.Sigma(row) * solver.Sigma(row)) : 1;
}

/// <summary>What all other rows foretell of one row: computed − observed, and its variance.</summary>
/// <param name="Foretold">Null where the others leave the row free.</param>
readonly record struct Others(double? Foretold, double Variance)
{
    /// <summary>Cause: a leverage carries rounding of about 1e-8.</summary>
    const double Alone = 1 - 1e-6;

    public static Others[] Of(Adjustment solver, Fit fit, int[] rows)
    {
        solver.Load(fit);
        var residual = new double[fit.Weights.Length];
        solver.Evaluate(fit.X, residual);
        return [.. rows.Select(r =>
        {
            var variance = solver.VarianceOfRow(fit, r);
            var leverage = fit.Weights[r] * variance;
            if (leverage > Alone) return new Others(null, double.PositiveInfinity);
            return new Others(residual[r] + leverage / (1 - leverage) * (residual[r] - fit.Shift![r]), variance / (1 - leverage));
        })];
    }
}

/// <summary>The normal reading that stands for a worn one: its weight, and how far its value lies from what was read.</summary>
readonly record struct Site(double Weight, double Shift)
{
    /// <summary>Cause: a row that bounds nothing must still count as a reading that touches its features; a ten thousandth of its weight alone does no harm.</summary>
    public const double Least = 1e-4;

    /// <summary>Nothing else known: mean and variance of error and wear together.</summary>
    public static Site Alone(double sigma, RowWear wear) => new(1 / (sigma * sigma + wear.Scale * wear.Scale), -wear.Sign * wear.Scale);

    /// <param name="foretold">Computed − observed by the others, mm.</param>
    /// <param name="variance">Of that.</param>
    public static Site Given(double foretold, double variance, double sigma, RowWear wear)
    {
        var departure = -wear.Sign * foretold;
        var total = sigma * sigma + variance;
        var (mean, std) = Intent.Wear.Worn.Wear(departure, Math.Sqrt(total), wear.Scale);
        // Derivatives of the logarithm of the reading's density with respect to the foretold value, after Tweedie: the
        // error's own mean and variance given the reading.
        var spread = total * sigma * sigma + variance * std * std;
        var weight = (total - std * std) / spread;
        var pull = wear.Sign * (departure - mean) * total / spread;
        weight = Math.Max(weight, Least * Alone(sigma, wear).Weight);
        return new Site(weight, foretold + pull / weight);
    }
}
