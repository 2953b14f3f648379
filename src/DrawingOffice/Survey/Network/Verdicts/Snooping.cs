using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>What snooping found: readings to set aside one by one, and groups within which nothing tells the members apart.</summary>
sealed record Accused(ImmutableArray<int> Single, ImmutableArray<ImmutableArray<int>> Groups)
{
    public ImmutableArray<int> All => [.. Single.Concat(Groups.SelectMany(g => g)).Distinct().Order()];
}

/// <summary>
/// Data snooping: set aside the reading with the largest |w| while it passes the critical value, adjust again, and at the end
/// take back any reading that the rest do not contradict. Confirmed by a robust re-fit over all readings, whose own suspects
/// replace the first ones if they explain the survey with fewer (or equally many and a smaller sum of squares).
/// </summary>
static class Snooping
{
    /// <summary>Two tests that move together to this degree differ by less than a twentieth of a σ: no reading at hand tells them apart.</summary>
    const double Inseparable = 0.999;

    /// <summary>
    /// Setting a reading aside lowers the weighted sum of squares by w², so that the odds of one culprit against another are
    /// exp((w₁² − w₂²)/2). Cause: under 3 to 1 is no conviction.
    /// </summary>
    const double AboutEven = 2.2;

    public static Doubts Find(Adjustment solver, Fit all, Testing tests, CancellationToken stop)
    {
        if (Contradicts(all)) return Contradiction(solver, all, tests);
        var steps = ImmutableArray.CreateBuilder<SnoopStep>();
        var accused = OneByOne(solver, all, tests, steps, stop);
        if (accused.All.IsEmpty && Suits(solver, all, tests))
            return new Doubts([], [], steps.ToImmutable(), true, "No reading is doubtful.");

        var robust = Robust.Suspects(solver, all, stop);
        var confirmed = Agrees(accused, robust);
        if (!confirmed && Better(solver, all, accused, robust, stop)) (accused, confirmed) = (Singled(robust), true);
        return new Doubts(accused.All, accused.Groups, steps.ToImmutable(), confirmed, Words(accused, confirmed));
    }

    /// <summary>No surplus reading, and yet no shape meets them: an impossible triangle. Readings that could be met would leave nothing.</summary>
    public static bool Contradicts(Fit fit) => fit.Redundancy < 1 && fit.SumOfSquares > 1;

    static Doubts Contradiction(Adjustment solver, Fit fit, Testing tests)
    {
        ImmutableArray<int> readings = [.. Enumerable.Range(0, fit.Weights.Length)
            .Where(r => fit.Weights[r] > 0 && solver.IsTestable(r) && tests.Residual[r] * tests.Residual[r] * fit.Weights[r] > 0.01 * fit.SumOfSquares)
            .Select(r => solver.ReadingOf(r)).Distinct().Order()];
        return new Doubts(readings, [readings], [], false, $"Readings {string.Join(", ", readings.Select(i => i + 1))} contradict each other: no shape has all of them. Measure them again.");
    }

    static Accused OneByOne(Adjustment solver, Fit fit, Testing tests, ImmutableArray<SnoopStep>.Builder steps, CancellationToken stop)
    {
        var aside = new List<int>();
        var groups = new List<ImmutableArray<int>>();
        var x = fit.X;
        while (true)
        {
            stop.ThrowIfCancellationRequested();
            var (row, value) = Largest(solver, fit, tests);
            var tied = row < 0 ? [] : Tied(solver, fit, tests, row);
            var reading = row < 0 ? (int?)null : solver.ReadingOf(row);
            steps.Add(new SnoopStep([.. aside], fit.SumOfSquares, fit.Redundancy, reading, value, tests.Critical, tied));
            if (reading is not { } worst || value <= tests.Critical) break;
            if (!tied.IsEmpty) groups.Add([.. tied.Append(worst).Order()]);
            aside.Add(worst);
            fit = solver.Adjust(x, solver.Without(aside.ToHashSet()), stop);
            tests = Testing.Of(solver, fit);
        }
        aside = TakeBack(solver, fit, aside, groups, stop);
        return new Accused([.. aside.Where(i => !groups.Any(g => g.Contains(i))).Order()], [.. groups.Where(g => g.Any(aside.Contains))]);
    }

    /// <summary>Largest |w| among the rows that may be accused; row −1 when none is checked.</summary>
    public static (int Row, double Value) Largest(Adjustment solver, Fit fit, Testing tests)
    {
        var (best, value) = (-1, 0.0);
        for (var r = 0; r < fit.Weights.Length; r++)
            if (fit.Weights[r] > 0 && solver.IsTestable(r) && tests.CanBeAccused(r) && tests.Normalised(r, solver.Sigma(r)) is { } w && Math.Abs(w) > value)
                (best, value) = (r, Math.Abs(w));
        return (best, value);
    }

    /// <summary>Other readings whose test statistic is the same to within <see cref="Inseparable"/>, or that explain the survey about as well.</summary>
    public static ImmutableArray<int> Tied(Adjustment solver, Fit fit, Testing tests, int row)
    {
        var jacobian = solver.Jacobian;
        var q = solver.Cofactors(fit, jacobian.ColumnsOf(row), jacobian.ValuesOf(row));
        var tied = new SortedSet<int>();
        var worst = tests.Normalised(row, solver.Sigma(row)) ?? 0;
        for (var r = 0; r < fit.Weights.Length; r++)
        {
            if (r == row || fit.Weights[r] == 0 || !tests.CanBeAccused(r) || !solver.IsTestable(r)) continue;
            var scale = Math.Sqrt(fit.Weights[r] * fit.Weights[row] * tests.Share(r) * tests.Share(row) / (tests.Redundancy[r] * tests.Redundancy[row]));
            // Residuals of two rows vary together by −aᵀQa.
            var together = -jacobian.Dot(r, q) * scale;
            if (Math.Abs(together) > Inseparable || tests.Normalised(r, solver.Sigma(r)) is { } w && AsLikely(w, worst, together, tests.Critical)) tied.Add(solver.ReadingOf(r));
        }
        tied.Remove(solver.ReadingOf(row));
        return [.. tied];
    }

    /// <summary>The other explains the survey about as well, and is not itself convicted once the worst is set aside: one error, two places for it.</summary>
    static bool AsLikely(double other, double worst, double together, double critical) =>
        other * other > worst * worst - AboutEven && Math.Abs(other - together * worst) <= critical * Math.Sqrt(1 - together * together);

    /// <summary>A reading set aside early, while another error still bent the plan, may turn out good: it is taken back when the final plan foretells it.</summary>
    static List<int> TakeBack(Adjustment solver, Fit fit, List<int> aside, List<ImmutableArray<int>> groups, CancellationToken stop)
    {
        var kept = aside.ToList();
        foreach (var reading in aside)
        {
            if (kept.Count < 2 || groups.Any(g => g.Contains(reading))) continue;
            var trial = solver.Adjust(fit.X, solver.Without(kept.Where(i => i != reading).ToHashSet()), stop);
            var tests = Testing.Of(solver, trial);
            if (Largest(solver, trial, tests).Value <= tests.Critical) kept.Remove(reading);
        }
        return kept;
    }

    /// <summary>The survey as a whole is as good as its stated ± (upper side of the global test).</summary>
    static bool Suits(Adjustment solver, Fit fit, Testing tests) =>
        fit.Redundancy < 1 || fit.SumOfSquares <= Maths.Statistics.ChiSquare.Quantile(1 - Testing.FalseAlarm / 10, fit.Redundancy) || Largest(solver, fit, tests).Row < 0;

    static bool Agrees(Accused accused, ImmutableArray<int> robust) =>
        robust.All(accused.All.Contains)
        && accused.Single.All(i => robust.Contains(i))
        && accused.Groups.All(g => g.Any(i => robust.Contains(i)));

    /// <summary>True when setting aside the robust suspects leaves a clean survey at a lower price.</summary>
    static bool Better(Adjustment solver, Fit all, Accused accused, ImmutableArray<int> robust, CancellationToken stop)
    {
        if (robust.IsEmpty) return false;
        var second = solver.Adjust(all.X, solver.Without(robust.ToHashSet()), stop);
        var tests = Testing.Of(solver, second);
        if (second.Redundancy < 1 || second.Free.Length > all.Free.Length || Largest(solver, second, tests).Value > tests.Critical || !Suits(solver, second, tests)) return false;
        var price = accused.Single.Length + accused.Groups.Length;
        if (robust.Length != price) return price == 0 || robust.Length < price;
        var first = solver.Adjust(all.X, solver.Without(accused.Single.Concat(accused.Groups.Select(g => g[0])).ToHashSet()), stop);
        return second.SumOfSquares < first.SumOfSquares - 1e-6;
    }

    static Accused Singled(ImmutableArray<int> readings) => new(readings, []);

    static string Words(Accused accused, bool confirmed)
    {
        if (accused.All.IsEmpty) return "No single reading stands out, yet together they differ more than their ± allows: look at the ± of the instruments.";
        var parts = new List<string>();
        if (accused.Single is { Length: 1 } one) parts.Add($"Reading {one[0] + 1} is doubtful.");
        else if (!accused.Single.IsEmpty) parts.Add($"Readings {string.Join(", ", accused.Single.Select(i => i + 1))} are doubtful.");
        foreach (var group in accused.Groups) parts.Add($"At least one of readings {string.Join(", ", group.Select(i => i + 1))} is wrong; nothing measured so far says which, so all stay in until one is measured again.");
        parts.Add(confirmed ? "A robust re-fit agrees." : "A robust re-fit does not point at the same ones: measure again before you trust either.");
        return string.Join(" ", parts);
    }
}
