using WitnessMark.Maths.Statistics;
using WitnessMark.Tests;

namespace WitnessMark.Maths.Tests.Statistics;

public class ChiSquareTests
{
    [Theory]
    [Truth(Grade.Published, "NIST/SEMATECH e-Handbook of Statistical Methods, lower critical values of chi-square (2011), as restated in a textbook's table 7b")]
    [InlineData(5, 1.610, 1.145, 0.831, 0.554, 0.210)]
    [InlineData(10, 4.865, 3.940, 3.247, 2.558, 1.479)]
    [InlineData(15, 8.547, 7.261, 6.262, 5.229, 3.483)]
    [InlineData(30, 20.599, 18.493, 16.791, 14.953, 11.588)]
    [InlineData(60, 46.459, 43.188, 40.482, 37.485, 31.738)]
    [InlineData(80, 64.278, 60.391, 57.153, 53.540, 46.520)]
    [InlineData(100, 82.358, 77.929, 74.222, 70.065, 61.918)]
    public void Lower_critical_values(int freedom, double at10, double at5, double at2_5, double at1, double at0_1)
    {
        foreach (var (p, x) in new[] { (0.10, at10), (0.05, at5), (0.025, at2_5), (0.01, at1), (0.001, at0_1) })
            Assert.Equal(x, ChiSquare.Quantile(p, freedom), 0.00051);
    }

    [Theory]
    [Truth(Grade.Published, "Table of the chi-square distribution in the examination papers of the Namibia University of Science and Technology, five decimals")]
    [InlineData(1, 2.70554, 3.84146, 5.02389, 6.63490, 7.87944)]
    [InlineData(4, 7.77944, 9.48773, 11.14329, 13.27670, 14.86026)]
    [InlineData(6, 10.64464, 12.59159, 14.44938, 16.81189, 18.54758)]
    public void Upper_critical_values(int freedom, double at10, double at5, double at2_5, double at1, double at0_5)
    {
        foreach (var (q, x) in new[] { (0.10, at10), (0.05, at5), (0.025, at2_5), (0.01, at1), (0.005, at0_5) })
        {
            Assert.Equal(x, ChiSquare.Quantile(1 - q, freedom), 0.0000051);
            Assert.Equal(q, ChiSquare.Above(x, freedom), 2e-6);
        }
    }

    [Theory]
    [Truth(Grade.Published, "Abramowitz and Stegun, Handbook of Mathematical Functions, table 26.7, as restated in a public library of test values")]
    [InlineData(1, 0.01, 0.0796557)]
    [InlineData(2, 0.01, 0.00498752)]
    [InlineData(1, 0.02, 0.112463)]
    [InlineData(2, 0.02, 0.00995017)]
    [InlineData(1, 0.40, 0.472911)]
    [InlineData(2, 0.40, 0.181269)]
    public void Probability_below(int freedom, double x, double probability) => Assert.Equal(1 - probability, ChiSquare.Above(x, freedom), 6e-7);

    [Fact]
    [Truth(Grade.SecondImplementation, "MathNet.Numerics 5.0.0, ChiSquared")]
    public void Probabilities_and_quantiles_on_a_grid()
    {
        foreach (var freedom in new[] { 1, 2, 3, 7, 20, 55, 200, 800 })
            foreach (var p in new[] { 0.001, 0.025, 0.3, 0.5, 0.9, 0.95, 0.975, 0.999 })
            {
                var x = ChiSquare.Quantile(p, freedom);
                Assert.InRange(MathNet.Numerics.Distributions.ChiSquared.CDF(freedom, x) / p, 1 - 1e-9, 1 + 1e-9);
                Assert.Equal(1 - p, ChiSquare.Above(x, freedom), 1e-12);
            }
    }
}
