namespace WitnessMark.Maths.Statistics;

/// <summary>The standard normal distribution.</summary>
public static class Normal
{
    /// <summary>Complementary error function; relative error below 1e-13 for |x| ≤ 26 (by series below 2.5, continued fraction above).</summary>
    public static double Erfc(double x)
    {
        if (x < 0) return 2 - Erfc(-x);
        var (p, q) = Gamma.Regularised(0.5, x * x);
        return x < 1 ? 1 - p : q;
    }

    /// <summary>P(Z ≤ z).</summary>
    public static double Below(double z) => 0.5 * Erfc(-z / Math.Sqrt(2));

    /// <summary>P(|Z| > z).</summary>
    public static double Outside(double z) => Erfc(Math.Abs(z) / Math.Sqrt(2));

    /// <summary>z with P(Z ≤ z) = p, for 0 &lt; p &lt; 1. Bisection, then Newton to the last digits.</summary>
    public static double Quantile(double p)
    {
        if (!(p > 0 && p < 1)) throw new ArgumentOutOfRangeException(nameof(p), p, "0 < p < 1");
        if (p > 0.5) return -Quantile(1 - p);
        return -OutsideQuantile(2 * p);
    }

    /// <summary>z with P(|Z| > z) = alpha, for 0 &lt; alpha ≤ 1.</summary>
    public static double OutsideQuantile(double alpha)
    {
        if (!(alpha > 0 && alpha <= 1)) throw new ArgumentOutOfRangeException(nameof(alpha), alpha, "0 < alpha ≤ 1");
        double low = 0, high = 38;
        for (var k = 0; k < 30; k++)
        {
            var middle = (low + high) / 2;
            if (Outside(middle) > alpha) low = middle;
            else high = middle;
        }
        var z = (low + high) / 2;
        for (var k = 0; k < 3; k++)
        {
            var density = 2 * Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI);
            if (density > 0) z += (Outside(z) - alpha) / density;
        }
        return z;
    }
}
