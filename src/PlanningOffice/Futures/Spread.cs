using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>
/// Where a quantity lies over many futures. Each figure carries the standard error it has because the futures are only so
/// many; it says nothing of whether the estimates put in were right.
/// </summary>
/// <param name="Mean">Standard error sd/√n.</param>
/// <param name="P10">One future in ten ends no later (or dearer).</param>
/// <param name="P50">Half do.</param>
/// <param name="P90">Nine in ten do.</param>
public sealed record Spread(Uncertain Mean, double Sd, Uncertain P10, Uncertain P50, Uncertain P90, int Futures)
{
    /// <summary>Fewest futures that P10 and P90 with their errors can be told from.</summary>
    public const int FewestFutures = 200;

    /// <param name="draws">At least <see cref="FewestFutures"/>; left sorted.</param>
    public static Spread Of(double[] draws)
    {
        if (draws.Length < FewestFutures)
            throw new RefusedException(Refusal.Of("futures", $"{draws.Length}", $"at least {FewestFutures} are needed to tell P10 and P90"));
        Array.Sort(draws);
        var mean = draws.Average();
        var sd = Math.Sqrt(draws.Sum(x => (x - mean) * (x - mean)) / (draws.Length - 1));
        return new(new(mean, sd / Math.Sqrt(draws.Length)), sd,
            Quantile(draws, 0.1), Quantile(draws, 0.5), Quantile(draws, 0.9), draws.Length);
    }

    /// <summary>
    /// The rank of the true quantile among n draws is binomial with standard deviation √(np(1 − p)); half the gap between
    /// the draws one such step to either side is the standard error, whatever the distribution (H. A. David and
    /// H. N. Nagaraja, Order Statistics, section 7.1).
    /// </summary>
    static Uncertain Quantile(double[] sorted, double p)
    {
        var step = Math.Sqrt(p * (1 - p) / sorted.Length);
        return new(At(sorted, p), (At(sorted, p + step) - At(sorted, p - step)) / 2);
    }

    /// <summary>Straight-line interpolation between order statistics, rank (n − 1)p.</summary>
    static double At(double[] sorted, double p)
    {
        var rank = Math.Clamp(p, 0, 1) * (sorted.Length - 1);
        var below = (int)rank;
        var above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + (rank - below) * (sorted[above] - sorted[below]);
    }
}
