using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Futures;

public sealed class DurationTests
{
    public static TheoryData<Duration> All =>
    [
        new Lognormal(5, 3), new Lognormal(1, 0.25), new PertBeta(2, 3, 8), new PertBeta(1, 1, 5), new PertBeta(0, 4, 4),
        new Gamma(0.3, 2), new Gamma(1, 1), new Gamma(7.5, 0.4), new Exponential(3),
    ];

    [Theory]
    [MemberData(nameof(All))]
    [Truth(Grade.Published, "means and variances of the lognormal, beta, gamma and exponential distributions (textbook formulas)")]
    public void Drawn_mean_and_spread_agree_with_theory(Duration duration)
    {
        const int n = 100_000;
        var chance = new Chance(11);
        double sum = 0, squares = 0;
        for (var i = 0; i < n; i++)
        {
            var x = duration.Draw(chance) - duration.Mean;
            sum += x;
            squares += x * x;
        }
        Assert.InRange(sum / n / (duration.Sd / Math.Sqrt(n)), -4.5, 4.5);
        // The heaviest tail here (lognormal 5, 3; kurtosis 14) knows its sd to about 0.6 %.
        Assert.InRange(Math.Sqrt(squares / n) / duration.Sd, 0.97, 1.03);
    }

    [Fact]
    [Truth(Grade.Published, "PERT mean (l + 4m + h)/6; beta variance αβ/((α+β)²(α+β+1)): for 0, 1, 4 α = 2, β = 4, sd = 4·√(8/252)")]
    public void Pert_has_the_known_mean_and_spread()
    {
        var pert = new PertBeta(0, 1, 4);
        Assert.Equal(8.0 / 6, pert.Mean, 12);
        Assert.Equal(4 * Math.Sqrt(8.0 / 252), pert.Sd, 12);
    }

    [Theory]
    [InlineData(3, 2, 8)]
    [InlineData(-1, 2, 8)]
    [InlineData(1, double.NaN, 8)]
    [InlineData(1, 2, double.PositiveInfinity)]
    [Truth(Grade.Property, "bad figures are refused in words")]
    public void Figures_that_do_not_rise_are_refused(double low, double mode, double high) =>
        Assert.Contains("rise", new PertBeta(low, mode, high).Wrong!.Sentence);

    [Fact]
    [Truth(Grade.Property, "a ring cannot be ordered; a name used twice is ambiguous")]
    public void Broken_networks_are_refused_with_the_culprit_named()
    {
        var one = new Exponential(1);
        Assert.Contains("wait for itself", Network.Of([new("A", ["B"], one), new("B", ["A"], one)]).Refusal!.Sentence);
        Assert.Contains("\"Z\"", Network.Of([new("A", ["Z"], one)]).Refusal!.Sentence);
        Assert.Contains("\"A\"", Network.Of([new("A", [], one), new("A", [], one)]).Refusal!.Sentence);
        Assert.Contains("activity A", Network.Of([new("A", [], new Exponential(0))]).Refusal!.Sentence);
        Assert.False(Network.Of([]).Ok);
    }

    [Fact]
    [Truth(Grade.Property, "an activity may be listed before its predecessors")]
    public void Listing_order_does_not_matter()
    {
        var network = Network.Of([new("B", ["A"], new PertBeta(2, 2, 2)), new("A", [], new PertBeta(3, 3, 3))]).Value;
        Assert.Equal(5, Completion.Simulate(network, 200, 1).Time.P50.Value, 12);
    }
}
