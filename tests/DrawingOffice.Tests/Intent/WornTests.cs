using CsCheck;
using MathNet.Numerics.Integration;
using WitnessMark.DrawingOffice.Intent.Wear;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Intent;

[Truth(Grade.SecondImplementation, "MathNet.Numerics 5.0.0, Gauss-Kronrod integration of Gaussian times exponential")]
public class WornTests
{
    public static TheoryData<double, double, double> Cases()
    {
        var cases = new TheoryData<double, double, double>();
        foreach (var scale in (double[])[1e-3, 0.05, 0.2, 1, 5])
            foreach (var sigma in (double[])[0.02, 0.1, 0.5])
                foreach (var departure in (double[])[-3.5, -1, -0.1, 0, 0.3, 2])
                    // Where the density is below e^-500 or the error above eight standard deviations the reference loses its digits.
                    if (departure > -8 * sigma && departure / scale - sigma * sigma / (2 * scale * scale) < 500) cases.Add(departure, sigma, scale);
        return cases;
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Density_is_the_convolution(double departure, double sigma, double scale) =>
        AssertRelative(Integral(_ => 1, departure, sigma, scale), Math.Exp(Worn.LogDensity(departure, sigma, scale)), 1e-9);

    [Theory]
    [MemberData(nameof(Cases))]
    public void Chance_below_is_the_integral_of_the_density(double departure, double sigma, double scale)
    {
        var low = -9 * sigma;
        if (departure <= low) return;
        var wanted = Pieces(x => Math.Exp(Worn.LogDensity(x, sigma, scale)), low, departure, sigma);
        Assert.Equal(wanted, Worn.Below(departure, sigma, scale), 1e-10);
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Wear_has_the_mean_and_spread_of_the_posterior(double departure, double sigma, double scale)
    {
        var all = Integral(_ => 1, departure, sigma, scale);
        var mean = Integral(w => w, departure, sigma, scale) / all;
        var variance = Integral(w => (w - mean) * (w - mean), departure, sigma, scale) / all;
        var wear = Worn.Wear(departure, sigma, scale);
        AssertRelative(mean, wear.Value, 1e-8);
        AssertRelative(Math.Sqrt(variance), wear.Std, 1e-6);
    }

    [Fact]
    [Truth(Grade.Property, "An exponential of vanishing mean leaves the Gaussian; shift of first order in scale/sigma")]
    public void No_wear_is_the_limit_of_little_wear()
    {
        for (var scale = 1e-3; scale > 1e-300; scale *= 1e-9)
            Assert.Equal(Worn.LogDensity(0.03, 0.02, 0), Worn.LogDensity(0.03, 0.02, scale * 1e-3), 1e-3);
    }

    [Fact]
    [Truth(Grade.Property, "A likelihood is finite wherever its arguments are")]
    public void Never_overflows()
    {
        var lengths = Gen.Double[-9, 3].Select(e => Math.Pow(10, e));
        Gen.Select(Gen.Double[-1e4, 1e4], lengths, lengths).Sample((d, sigma, scale) =>
        {
            var wear = Worn.Wear(d, sigma, scale);
            return double.IsFinite(Worn.LogDensity(d, sigma, scale)) && Worn.Below(d, sigma, scale) is >= 0 and <= 1
                && wear.Value >= 0 && double.IsFinite(wear.Value) && wear.Std >= 0 && double.IsFinite(wear.Std);
        });
    }

    // ∫ f(w)·(1/scale)exp(−w/scale)·N(departure − w; sigma) dw over w ≥ 0.
    static double Integral(Func<double, double> f, double departure, double sigma, double scale)
    {
        double Integrand(double w)
        {
            var u = (departure - w) / sigma;
            return f(w) * Math.Exp(-w / scale - u * u / 2) / (scale * sigma * Math.Sqrt(2 * Math.PI));
        }
        return Pieces(Integrand, 0, Math.Max(departure, 0) + 12 * sigma, Math.Min(sigma, scale));
    }

    // Panels of one standard width, so that the adaptive rule cannot step over a narrow peak.
    static double Pieces(Func<double, double> f, double low, double high, double width)
    {
        var panels = (int)Math.Clamp((high - low) / width, 1, 20_000);
        var step = (high - low) / panels;
        return Enumerable.Range(0, panels).Sum(i => GaussKronrodRule.Integrate(f, low + i * step, low + (i + 1) * step, out _, out _, 1e-13, 10, 15));
    }

    static void AssertRelative(double wanted, double got, double tolerance) =>
        Assert.True(Math.Abs(got - wanted) <= tolerance * Math.Abs(wanted), $"{got:R} against {wanted:R}");
}
