using System.Collections.Immutable;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Weights;

/// <summary>What the readings say of a set of conditions, given everything accepted before.</summary>
/// <param name="Freedom">Conditions that are not certain yet; the others follow from what holds.</param>
/// <param name="Log">Logarithm of how much better the readings are foretold if it was meant than if the values fell by chance.</param>
/// <param name="Contradicts">A condition that what is held has made certain to be false.</param>
readonly record struct Verdict(double ChiSquare, int Freedom, double Log, bool Contradicts)
{
    /// <summary>Follows from what is held.</summary>
    public bool Implied => Freedom == 0 && !Contradicts;
}

/// <summary>Weighs conditions by the Gaussian of readings and making: ln N(h; 0, H P Hᵀ) against an even spread over the stated range.</summary>
static class Weigher
{
    /// <summary>
    /// Cause: the slopes of what was accepted are taken where the plan then stood, a few tenths of a mm off; a standard deviation
    /// that has fallen to a hundredth of what it was is that and no longer doubt.
    /// </summary>
    public const double Certain = 1e-4;

    /// <summary>mm² or rad². Cause: a condition that the sketch itself keeps (two corners on their own edge) has only the rounding of central differences.</summary>
    public const double Rounding = 1e-12;

    public static bool Open(double variance, Slope slope) => variance > Math.Max(Certain * slope.Before, Rounding);

    /// <summary>A certain value this many of its former standard deviations off is false and not rounding.</summary>
    const double Off = 0.1;

    public static Verdict Of(ImmutableArray<Slope> slopes, Belief belief, double[] from)
    {
        if (slopes.Length == 1) return One(slopes[0], belief, from);
        var n = slopes.Length;
        var (s, h) = (new double[n, n], new double[n]);
        for (var i = 0; i < n; i++)
        {
            h[i] = slopes[i].At(from, belief.X);
            for (var k = 0; k <= i; k++) s[i, k] = belief.Now.Covariance(slopes[i].Columns, slopes[i].Rates, slopes[k].Columns, slopes[k].Rates);
        }
        double chi = 0, log = 0;
        var (freedom, contradicts) = (0, false);
        var used = new bool[n];
        for (var i = 0; i < n; i++)
        {
            // L D Lᵀ by rows: what earlier conditions say of this one is taken out first.
            var (pivot, rest) = (s[i, i], h[i]);
            for (var k = 0; k < i; k++)
            {
                if (!used[k]) continue;
                for (var m = 0; m < k; m++)
                    if (used[m]) s[i, k] -= s[i, m] * s[k, m] / s[m, m];
                pivot -= s[i, k] * s[i, k] / s[k, k];
                rest -= s[i, k] / s[k, k] * h[k];
            }
            (s[i, i], h[i]) = (pivot, rest);
            used[i] = Open(pivot, slopes[i]);
            if (!used[i])
            {
                contradicts |= False(rest, slopes[i]);
                continue;
            }
            freedom++;
            chi += rest * rest / pivot;
            log += slopes[i].Tie.LogRange - 0.5 * (Math.Log(2 * Math.PI * pivot) + rest * rest / pivot);
        }
        return new(chi, freedom, log, contradicts);
    }

    static bool False(double value, Slope slope) => Math.Abs(value) > Off * Math.Sqrt(Math.Max(slope.Before, 1e-6));

    static Verdict One(Slope slope, Belief belief, double[] from)
    {
        var value = slope.At(from, belief.X);
        var variance = belief.Now.Covariance(slope.Columns, slope.Rates, slope.Columns, slope.Rates);
        if (!Open(variance, slope)) return new(0, 0, 0, False(value, slope));
        var chi = value * value / variance;
        return new(chi, 1, slope.Tie.LogRange - 0.5 * (Math.Log(2 * Math.PI * variance) + chi), false);
    }
}
