using WitnessMark.Maths;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.DrawingOffice.Intent.Wear;

/// <summary>
/// How far a worn size lies from where it was made: a one-sided exponential wear of mean <c>scale</c> under a Gaussian
/// error of standard deviation <c>sigma</c> (the exponentially modified Gaussian). All lengths in one unit; the
/// departure is counted positive the way wear goes. Exact, and stable from no wear at all (scale 0, a plain Gaussian)
/// to wear that dwarfs the error; relative error of the density below 1e-13 where the exponent is below 100.
/// </summary>
public static class Worn
{
    static readonly double Root2 = Math.Sqrt(2);
    static readonly double LogRoot2Pi = Math.Log(2 * Math.PI) / 2;

    /// <summary>Natural logarithm of the density at <paramref name="departure"/>.</summary>
    /// <param name="sigma">Positive.</param>
    /// <param name="scale">Mean wear, 0 or more.</param>
    public static double LogDensity(double departure, double sigma, double scale)
    {
        var u = departure / sigma;
        if (scale == 0) return -u * u / 2 - Math.Log(sigma) - LogRoot2Pi;
        var z = (sigma / scale - u) / Root2;
        // Both forms are equal; each is used where its exponential cannot overflow.
        return z >= 0
            ? Math.Log(Erfcx.Scaled(z)) - u * u / 2 - Math.Log(2 * scale)
            : Math.Log(2 - Math.Exp(-z * z) * Erfcx.Scaled(-z)) + sigma * sigma / (2 * scale * scale) - departure / scale - Math.Log(2 * scale);
    }

    /// <summary>Chance of a departure no larger than this one.</summary>
    public static double Below(double departure, double sigma, double scale)
    {
        var gaussian = Normal.Below(departure / sigma);
        return scale == 0 ? gaussian : Math.Clamp(gaussian - scale * Math.Exp(LogDensity(departure, sigma, scale)), 0, 1);
    }

    /// <summary>The wear itself, given the departure: a Gaussian cut off at zero.</summary>
    public static Uncertain Wear(double departure, double sigma, double scale)
    {
        if (scale == 0) return default;
        var t = departure / sigma - sigma / scale;
        // Far below zero the general formula would subtract nearly equal numbers; both ways agree to 1e-9 at the join.
        if (t < -50) return FarTail(sigma, -t);
        var hazard = Math.Sqrt(2 / Math.PI) / Erfcx.Scaled(-t / Root2);
        return new Uncertain(sigma * (t + hazard), sigma * Math.Sqrt(Math.Max(0, 1 - hazard * (t + hazard))));
    }

    // Asymptotic series of the hazard's excess over a, and of 1 + a·hazard − hazard².
    static Uncertain FarTail(double sigma, double a)
    {
        var x = 1 / (a * a);
        var mean = (1 + x * (-2 + x * (10 + x * -74))) / a;
        var std = Math.Sqrt(1 + x * (-6 + x * (50 + x * -518))) / a;
        return new Uncertain(sigma * mean, sigma * std);
    }
}
