namespace WitnessMark.PlanningOffice;

/// <summary>What a forecast in chances was worth once the truth is known; less is better, and honesty scores best on average.</summary>
public static class Score
{
    /// <summary>
    /// Continuous ranked probability score of the distribution that puts equal weight on each draw:
    /// mean |X − y| − ½ mean |X − X′| (Gneiting and Raftery 2007, section 4.2), in the unit of the draws.
    /// </summary>
    /// <param name="draws">At least one; left sorted.</param>
    public static double Crps(Span<double> draws, double truth)
    {
        draws.Sort();
        var (n, miss, width) = (draws.Length, 0.0, 0.0);
        for (var i = 0; i < n; i++)
        {
            miss += Math.Abs(draws[i] - truth);
            width += (2 * i + 1 - n) * draws[i];
        }
        return miss / n - width / ((double)n * n);
    }
}
