namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>What a quantity is at the solution and how it changes with the unknowns.</summary>
readonly record struct Slope(double Value, int[] Columns, double[] Rates);

/// <summary>
/// Ranks readings not yet taken by what each would settle, on any adjustment. A reading with derivatives g and ± s changes the
/// variance of a dimension d by −(dᵀQg)² / (s² + gᵀQg): a rank-one update of the covariance Q, exact to first order.
/// </summary>
static class Ranking
{
    /// <summary>How many of the worst dimensions are followed when the largest uncertainty is lowered.</summary>
    public const int Watched = 48;

    /// <summary>Candidates that stop a free motion, those that stop it most firmly for their ± first.</summary>
    public static IReadOnlyList<int> Holding(Fit fit, IReadOnlyList<(Slope Slope, double Std)> candidates, int most, CancellationToken stop)
    {
        var ranked = new List<(int Candidate, double Firm)>();
        for (var i = 0; i < candidates.Count; i++)
        {
            stop.ThrowIfCancellationRequested();
            var (slope, std) = candidates[i];
            double square = 0;
            foreach (var motion in fit.Free)
            {
                double change = 0;
                for (var k = 0; k < slope.Columns.Length; k++) change += slope.Rates[k] * motion[slope.Columns[k]];
                square += change * change;
            }
            if (square > 1e-6) ranked.Add((i, Math.Sqrt(square) / std));
        }
        return [.. ranked.OrderByDescending(r => r.Firm).Take(most).Select(r => r.Candidate)];
    }

    /// <summary>The largest standard uncertainty now, which dimension has it (−1 for none), and the candidates that lower it most, each with what it would become.</summary>
    public static (double Now, int Worst, IReadOnlyList<(int Candidate, double Then)> Best) Lowering(
        Adjustment solver, Fit fit, IReadOnlyList<Slope> dimensions, IReadOnlyList<(Slope Slope, double Std)> candidates, int most, CancellationToken stop)
    {
        if (dimensions.Count == 0) return (0, -1, []);
        var cofactors = new double[solver.Unknowns][];
        for (var u = 0; u < cofactors.Length; u++) cofactors[u] = solver.Cofactors(fit, [u], [1]);
        var ordered = dimensions.Select((d, i) => (Index: i, Slope: d, Variance: Bilinear(cofactors, d, d))).OrderByDescending(d => d.Variance).Take(Watched + 1).ToList();
        var watched = ordered.Take(Watched).ToList();
        var floor = ordered.Count > Watched ? ordered[^1].Variance : 0;
        var ranked = new List<(int Candidate, double Largest, double Sum)>();
        for (var i = 0; i < candidates.Count; i++)
        {
            stop.ThrowIfCancellationRequested();
            var (slope, std) = candidates[i];
            var own = std * std + Bilinear(cofactors, slope, slope);
            var (largest, sum) = (floor, 0.0);
            foreach (var d in watched)
            {
                var shared = Bilinear(cofactors, d.Slope, slope);
                var left = d.Variance - shared * shared / own;
                largest = Math.Max(largest, left);
                sum += left;
            }
            ranked.Add((i, largest, sum));
        }
        return (Math.Sqrt(ordered[0].Variance), ordered[0].Index,
            [.. ranked.OrderBy(r => Math.Round(r.Largest, 12)).ThenBy(r => r.Sum).Take(most).Select(r => (r.Candidate, Math.Sqrt(Math.Max(0, r.Largest))))]);
    }

    static double Bilinear(double[][] q, Slope a, Slope b)
    {
        double sum = 0;
        for (var i = 0; i < a.Columns.Length; i++)
        {
            if (a.Rates[i] == 0) continue;
            var row = q[a.Columns[i]];
            double part = 0;
            for (var k = 0; k < b.Columns.Length; k++) part += row[b.Columns[k]] * b.Rates[k];
            sum += a.Rates[i] * part;
        }
        return sum;
    }
}
