using WitnessMark.Maths.Statistics;
using WitnessMark.Tests;

namespace WitnessMark.Maths.Tests.Statistics;

public class NormalTests(ITestOutputHelper output)
{
    [Theory]
    [Truth(Grade.Published, "Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.1, as restated in a public test of known values")]
    [InlineData(0.1, 0.539827837277029)]
    [InlineData(0.5, 0.691462461274013)]
    [InlineData(1.0, 0.841344746068543)]
    [InlineData(1.4, 0.919243340766229)]
    [InlineData(2.0, 0.977249868051821)]
    [InlineData(2.5, 0.993790334674224)]
    [InlineData(3.0, 0.998650101968370)]
    public void Below(double z, double probability)
    {
        Assert.Equal(probability, Normal.Below(z), 4e-15);
        Assert.Equal(1 - probability, Normal.Below(-z), 4e-15);
        Assert.Equal(2 * (1 - probability), Normal.Outside(z), 8e-15);
        Assert.Equal(z, Normal.Quantile(probability), 1e-13);
    }

    [Theory]
    [Truth(Grade.SecondImplementation, "erfc in 60-digit decimal arithmetic: Maclaurin series below 3, continued fraction above")]
    [InlineData(0.001, 9.988716212090307636e-1)]
    [InlineData(0.1, 8.875370839817151078e-1)]
    [InlineData(0.5, 4.795001221869534623e-1)]
    [InlineData(0.9, 2.030917875771678715e-1)]
    [InlineData(1, 1.572992070502851307e-1)]
    [InlineData(1.5, 3.389485352468927293e-2)]
    [InlineData(2, 4.677734981047265838e-3)]
    [InlineData(2.5, 4.069520174449589396e-4)]
    [InlineData(3, 2.209049699858544137e-5)]
    [InlineData(4, 1.541725790028001885e-8)]
    [InlineData(5, 1.537459794428034850e-12)]
    [InlineData(7, 4.183825607779414399e-23)]
    [InlineData(10, 2.088487583762544757e-45)]
    [InlineData(15, 7.212994172451206667e-100)]
    [InlineData(20, 5.395865611607900929e-176)]
    [InlineData(26, 5.663192408856142846e-296)]
    public void Erfc(double x, double value)
    {
        var error = Math.Abs(Normal.Erfc(x) / value - 1);
        output.WriteLine($"erfc({x}): relative error {error:0.0e0}");
        // The exponent −x² is rounded to 1e-16·x²; the rest is the continued fraction's, worst near 1.
        Assert.InRange(error, 0, 3e-14 + 1.2e-16 * x * x);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "MathNet.Numerics 5.0.0, SpecialFunctions.Erfc")]
    public void Erfc_on_a_grid()
    {
        double worst = 0;
        for (var x = -5.0; x <= 20; x += 0.01)
            worst = Math.Max(worst, Math.Abs(Normal.Erfc(x) / MathNet.Numerics.SpecialFunctions.Erfc(x) - 1));
        output.WriteLine($"largest relative difference {worst:0.0e0}");
        Assert.InRange(worst, 0, 1e-13);
    }

    [Theory]
    [Truth(Grade.Property, "the quantile undoes the distribution")]
    [InlineData(1e-300), InlineData(1e-100), InlineData(1e-20), InlineData(1e-9), InlineData(0.001), InlineData(0.05), InlineData(0.3), InlineData(0.9), InlineData(1)]
    public void Outside_quantile(double alpha) =>
        Assert.InRange(Normal.Outside(Normal.OutsideQuantile(alpha)) / alpha, 1 - 1e-12, 1 + 1e-12);
}
