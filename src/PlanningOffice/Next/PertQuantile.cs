using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Next;

/// <summary>Quantiles of the low / likely / high distribution.</summary>
static class PertQuantile
{
    /// <summary>Simpson panels over the beta density; the quantile is right to about 1e-5 of the range.</summary>
    const int Panels = 2000;

    /// <summary>Value below which a share <paramref name="p"/> of the cases lies; PERT-beta with α + β = 6.</summary>
    /// <param name="p">Above 0, below 1.</param>
    public static double Of(ThreePoint t, double p)
    {
        if (t.Wrong is { } wrong) throw new RefusedException(wrong);
        if (t.High <= t.Low) return t.Low;
        var a = 4 * (t.Likely - t.Low) / (t.High - t.Low);
        double Density(double x) => Math.Pow(x, a) * Math.Pow(1 - x, 4 - a);
        var (sums, h) = (new double[Panels + 1], 1.0 / Panels);
        for (var i = 0; i < Panels; i++)
            sums[i + 1] = sums[i] + h / 6 * (Density(i * h) + 4 * Density((i + 0.5) * h) + Density((i + 1) * h));
        var wanted = p * sums[Panels];
        var at = Array.FindIndex(sums, s => s >= wanted);
        var share = (wanted - sums[at - 1]) / (sums[at] - sums[at - 1]);
        return t.Low + (t.High - t.Low) * (at - 1 + share) * h;
    }
}
