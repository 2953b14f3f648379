namespace WitnessMark.Maths.Statistics;

/// <summary>Chi-square with whole degrees of freedom.</summary>
public static class ChiSquare
{
    /// <summary>P(χ² > x).</summary>
    public static double Above(double x, int freedom) => x <= 0 ? 1 : Gamma.Regularised(freedom / 2.0, x / 2).Q;

    /// <summary>x with P(χ² ≤ x) = p, for 0 &lt; p &lt; 1 and at least one degree of freedom.</summary>
    public static double Quantile(double p, int freedom)
    {
        if (!(p > 0 && p < 1) || freedom < 1) throw new ArgumentOutOfRangeException(nameof(p), p, "0 < p < 1 and freedom ≥ 1");
        double low = 0, high = freedom + 10;
        while (Gamma.Regularised(freedom / 2.0, high / 2).P < p) high *= 2;
        for (var k = 0; k < 200 && high - low > 1e-14 * high; k++)
        {
            var middle = (low + high) / 2;
            if (Gamma.Regularised(freedom / 2.0, middle / 2).P < p) low = middle;
            else high = middle;
        }
        return (low + high) / 2;
    }
}
