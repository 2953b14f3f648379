using WitnessMark.DrawingOffice.Intent.Wear;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Intent;

public class ErfcxTests
{
    [Theory]
    [Truth(Grade.FromMemory, "Abramowitz and Stegun, table 7.1: erf x to ten decimals (recalled, not seen)")]
    [InlineData(0.0, 0.0000000000)]
    [InlineData(0.1, 0.1124629160)]
    [InlineData(0.5, 0.5204998778)]
    [InlineData(1.0, 0.8427007929)]
    [InlineData(1.5, 0.9661051465)]
    [InlineData(2.0, 0.9953222650)]
    public void Agrees_with_the_printed_table(double x, double erf) =>
        Assert.Equal(erf, 1 - Math.Exp(-x * x) * Erfcx.Scaled(x), 0.5000001e-10);

    [Fact]
    [Truth(Grade.SecondImplementation, "MathNet.Numerics 5.0.0, SpecialFunctions.Erfc")]
    public void Agrees_with_another_implementation()
    {
        for (var x = -5.0; x < 20; x += 0.013)
            AssertRelative(MathNet.Numerics.SpecialFunctions.Erfc(x), Math.Exp(-x * x) * Erfcx.Scaled(x), 1e-12);
    }

    [Fact]
    [Truth(Grade.Property, "Continued fraction of erfc, DLMF 7.9.1, run to 400 terms")]
    public void Agrees_with_the_continued_fraction()
    {
        for (var x = 1.5; x < 1e6; x *= 1.07)
            AssertRelative(ContinuedFraction(x), Erfcx.Scaled(x), 1e-13);
    }

    [Fact]
    [Truth(Grade.Property, "erfcx' = 2x·erfcx − 2/√π, so that ∫ over a step gives the difference (Simpson)")]
    public void Obeys_its_differential_equation_across_the_joins()
    {
        foreach (var join in (double[])[-2, -0.46875, 0, 0.46875, 2, 4, 10])
        {
            const double h = 1e-3;
            double Slope(double x) => 2 * x * Erfcx.Scaled(x) - 2 / Math.Sqrt(Math.PI);
            var simpson = h / 3 * (Slope(join - h) + 4 * Slope(join) + Slope(join + h));
            Assert.Equal(simpson, Erfcx.Scaled(join + h) - Erfcx.Scaled(join - h), 1e-12 * Math.Max(1, Erfcx.Scaled(join)));
        }
    }

    static double ContinuedFraction(double x)
    {
        // √π·exp(x²)·erfc(x) = 1/(x + (1/2)/(x + 1/(x + (3/2)/(x + ...)))).
        var tail = x;
        for (var k = 400; k >= 1; k--) tail = x + k / 2.0 / tail;
        return 1 / (tail * Math.Sqrt(Math.PI));
    }

    static void AssertRelative(double wanted, double got, double tolerance) =>
        Assert.True(Math.Abs(got / wanted - 1) <= tolerance, $"{got:R} against {wanted:R}");
}
