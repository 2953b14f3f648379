using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;
using static WitnessMark.DrawingOffice.Tests.Survey.Worn.WornPlates;
using Density = WitnessMark.DrawingOffice.Intent.Wear.Worn;

namespace WitnessMark.DrawingOffice.Tests.Survey.Worn;

[Truth(Grade.SecondImplementation, "integration of the product of all densities on an even grid, written for this test")]
public class OneSidedTests
{
    static readonly Feature Hole = new("H", FeatureKind.Hole) { Sketch = new(0, 0), Condition = FeatureCondition.Worn, Wear = 0.3 };

    /// <summary>Diameter readings alone make a survey of one unknown, whose mean and spread can be integrated.</summary>
    static Uncertain Solved(params double[] read) =>
        Adjust.Solve(new Sample("d", "", [Hole], [.. read.Select((v, i) => Take(i, ReadingKind.Diameter, "H", null, v))]), searchMirrors: false).Of("H").Size!.Value;

    static Uncertain Integrated(Func<double, double> logDensity, double low, double high)
    {
        const int Nodes = 400_000;
        double total = 0, first = 0, second = 0;
        for (var i = 0; i <= Nodes; i++)
        {
            var m = low + (high - low) * i / Nodes;
            var p = Math.Exp(logDensity(m));
            (total, first, second) = (total + p, first + p * m, second + p * m * m);
        }
        var mean = first / total;
        return new Uncertain(mean, Math.Sqrt(second / total - mean * mean));
    }

    [Fact]
    public void One_worn_reading_alone_is_exact()
    {
        var got = Solved(10.4);
        var expected = Integrated(m => Density.LogDensity(10.4 - m, Sigma, 0.3), 2, 10.6);
        Assert.Equal(expected.Value, got.Value, 6);
        Assert.Equal(expected.Std, got.Std, 5);
    }

    [Theory, InlineData(10.05, 10.4), InlineData(10.05, 10.06), InlineData(10.0, 12.0), InlineData(10.1, 10.2, 10.3), InlineData(10.02, 10.4, 10.9, 10.6, 10.03)]
    public void Several_agree_with_integration(params double[] read)
    {
        var got = Solved(read);
        var expected = Integrated(m => read.Sum(v => Density.LogDensity(v - m, Sigma, 0.3)), read.Min() - 3, read.Min() + 0.3);
        Assert.InRange((got.Value - expected.Value) / expected.Std, -0.1, 0.1);
        Assert.InRange(got.Std / expected.Std, 0.9, 1.1);
    }

    /// <summary>Two corners sound, the third point's distance worn: the distance of two places by one worn and one sound reading.</summary>
    [Theory, InlineData(99.5), InlineData(99.98), InlineData(100.03), InlineData(100.5)]
    public void A_sound_and_a_worn_reading_together_agree_with_integration(double worn)
    {
        var sample = new Sample("s", "",
            [
                new("A", FeatureKind.Point) { Sketch = new(0, 0) }, new("B", FeatureKind.Point) { Sketch = new(100, 0) },
                new("W", FeatureKind.Edge) { From = "A", To = "B", Condition = FeatureCondition.Rusted, Wear = 0.5 },
            ],
            [Take(0, ReadingKind.LengthAlongEdge, "W", null, worn), Take(1, ReadingKind.LengthAlongEdge, "W", null, 100, 0.1)]);
        // Both ends have gone with the edge, by a summed mean of 1 mm; the second reading is one-sided too.
        var got = Adjust.Solve(sample, searchMirrors: false).Distance("A", "B")!.Value;
        var expected = Integrated(m => Density.LogDensity(m - worn, Sigma, 1) + Density.LogDensity(m - 100, 0.1, 1), 98, 112);
        Assert.InRange((got.Value - expected.Value) / expected.Std, -0.1, 0.1);
        Assert.InRange(got.Std / expected.Std, 0.9, 1.1);
    }

    [Fact]
    public void Density_used_for_sites_is_the_one_of_made_to()
    {
        // A site's weight and pull are derivatives of the density that the made-to search uses; here by differences.
        var wear = new WitnessMark.DrawingOffice.Survey.Network.Wear.RowWear(-1, 0.4, 0, MadeBound.AtLeast);
        const double Variance = 0.003, Foretold = 0.15, H = 1e-4;
        double Log(double f) => Density.LogDensity(f, Math.Sqrt(Sigma * Sigma + Variance), 0.4);
        var (slope, curve) = ((Log(Foretold + H) - Log(Foretold - H)) / (2 * H), (Log(Foretold + H) - 2 * Log(Foretold) + Log(Foretold - H)) / (H * H));
        var site = WitnessMark.DrawingOffice.Survey.Network.Wear.Site.Given(Foretold, Variance, Sigma, wear);
        var expected = -curve / (1 + Variance * curve);
        Assert.Equal(expected, site.Weight, 1e-4 * expected);
        Assert.Equal(Foretold - slope / curve, site.Shift, 4);
    }
}
