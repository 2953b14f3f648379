namespace WitnessMark.Maths.Statistics;

/// <summary>The gamma function and the incomplete gamma function.</summary>
public static class Gamma
{
    /// <summary>ln Γ(a) for a > 0; Stirling's series (Abramowitz and Stegun 6.1.41) after raising a above 12. Absolute error below 3e-15 + 1e-15 · |value| (measured).</summary>
    public static double Log(double a)
    {
        if (!(a > 0)) throw new ArgumentOutOfRangeException(nameof(a), a, "a > 0");
        double shift = 0;
        while (a < 12) shift -= Math.Log(a++);
        var r = 1 / (a * a);
        var series = (1.0 / 12 - r * (1.0 / 360 - r * (1.0 / 1260 - r * (1.0 / 1680 - r * (1.0 / 1188 - r * 691.0 / 360360))))) / a;
        return shift + (a - 0.5) * Math.Log(a) - a + 0.5 * Math.Log(2 * Math.PI) + series;
    }

    /// <summary>P(a, x) and Q(a, x) = 1 − P(a, x) for a > 0, x ≥ 0 (Abramowitz and Stegun 6.5.29 series, 6.5.31 continued fraction).</summary>
    public static (double P, double Q) Regularised(double a, double x)
    {
        if (!(a > 0 && x >= 0)) throw new ArgumentOutOfRangeException(nameof(x), x, "a > 0 and x ≥ 0");
        if (x == 0) return (0, 1);
        if (double.IsPositiveInfinity(x)) return (1, 0);
        var front = Math.Exp(a * Math.Log(x) - x - Log(a));
        if (x < a + 1)
        {
            var p = front * Series(a, x);
            return (p, 1 - p);
        }
        var q = front * Fraction(a, x);
        return (1 - q, q);
    }

    static double Series(double a, double x)
    {
        var term = 1 / a;
        var sum = term;
        for (var k = 1; k < 10_000 && term > sum * 1e-17; k++) sum += term *= x / (a + k);
        return sum;
    }

    /// <summary>Modified Lentz evaluation.</summary>
    static double Fraction(double a, double x)
    {
        const double tiny = 1e-300;
        var b = x + 1 - a;
        var c = 1 / tiny;
        var d = 1 / b;
        var h = d;
        for (var k = 1; k < 10_000; k++)
        {
            var n = -k * (k - a);
            b += 2;
            d = n * d + b;
            d = 1 / (Math.Abs(d) < tiny ? tiny : d);
            c = b + n / c;
            if (Math.Abs(c) < tiny) c = tiny;
            var change = c * d;
            h *= change;
            if (Math.Abs(change - 1) < 1e-16) break;
        }
        return h;
    }
}
