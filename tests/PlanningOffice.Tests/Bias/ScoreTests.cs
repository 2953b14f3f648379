using WitnessMark.Maths;
using WitnessMark.Maths.Statistics;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Bias;

public sealed class ScoreTests
{
    [Theory]
    [InlineData(0, 1, 0.3)]
    [InlineData(2, 0.5, 1.1)]
    [InlineData(-1, 2, 6)]
    [Truth(Grade.Published, "T. Gneiting and A. E. Raftery (2007), Strictly proper scoring rules, prediction and estimation, JASA 102, equation 21: CRPS of the normal; the closed form itself against numeric integration")]
    public void Draws_of_a_normal_score_as_published(double mean, double sd, double truth)
    {
        var expected = ClosedForms.Normal(mean, sd, truth);
        Assert.Equal(ClosedForms.Integrated(x => Normal.Below((x - mean) / sd), mean - 9 * sd, mean + 9 * sd, truth), expected, 1e-5);
        Assert.Equal(expected, Score.Crps(Ladder(p => mean + sd * Normal.Quantile(p)), truth), 2e-3 * sd);
    }

    [Theory]
    [InlineData(0.1, 0.9, 3)]
    [InlineData(0.7, 0.3, 1.5)]
    [Truth(Grade.Published, "S. Baran and S. Lerch (2015), Log-normal distribution based ensemble model output statistics models for probabilistic wind-speed forecasting, QJRMS 141: CRPS of the log-normal; the closed form itself against numeric integration")]
    public void Draws_of_a_lognormal_score_as_published(double mu, double sigma, double truth)
    {
        var expected = ClosedForms.LogNormal(mu, sigma, truth);
        Assert.Equal(ClosedForms.Integrated(x => x > 0 ? Normal.Below((Math.Log(x) - mu) / sigma) : 0, 0, Math.Exp(mu + 7 * sigma), truth), expected, 1e-3);
        Assert.Equal(expected, Score.Crps(Ladder(p => Math.Exp(mu + sigma * Normal.Quantile(p))), truth), 0.01 * expected);
    }

    [Fact]
    [Truth(Grade.Published, "scoringRules (R package), test of crps_lnorm: y = 3, meanlog 0.1, sdlog 0.9 gives 1.13552645")]
    public void The_closed_form_is_that_of_a_reference_library() => Assert.Equal(1.13552645, ClosedForms.LogNormal(0.1, 0.9, 3), 8);

    [Fact]
    [Truth(Grade.Property, "one draw is a bare guess: its score is how far it missed")]
    public void A_bare_guess_scores_its_miss() => Assert.Equal(2.5, Score.Crps([4.0], 6.5), 12);

    [Fact]
    [Truth(Grade.SecondImplementation, "the double sum of |x - x'| written out")]
    public void The_sorted_sum_is_the_double_sum()
    {
        var chance = new Chance(5);
        var draws = Enumerable.Range(0, 60).Select(_ => chance.Uniform(0, 10)).ToArray();
        var plain = draws.Average(x => Math.Abs(x - 4)) - draws.Average(x => draws.Average(z => Math.Abs(x - z))) / 2;
        Assert.Equal(plain, Score.Crps(draws, 4), 12);
    }

    static double[] Ladder(Func<double, double> quantile) => [.. Enumerable.Range(0, 2000).Select(i => quantile((i + 0.5) / 2000))];
}

static class ClosedForms
{
    public static double Normal(double mean, double sd, double truth)
    {
        var z = (truth - mean) / sd;
        return sd * (z * (2 * Maths.Statistics.Normal.Below(z) - 1) + 2 * Math.Exp(-z * z / 2) / Math.Sqrt(2 * Math.PI) - 1 / Math.Sqrt(Math.PI));
    }

    public static double LogNormal(double mu, double sigma, double truth)
    {
        var w = (Math.Log(truth) - mu) / sigma;
        return truth * (2 * Maths.Statistics.Normal.Below(w) - 1)
            - 2 * Math.Exp(mu + sigma * sigma / 2) * (Maths.Statistics.Normal.Below(w - sigma) + Maths.Statistics.Normal.Below(sigma / Math.Sqrt(2)) - 1);
    }

    /// <summary>∫ (F(x) − 1{x ≥ truth})² dx by Simpson on either side of the truth.</summary>
    public static double Integrated(Func<double, double> below, double from, double to, double truth) =>
        Simpson(x => below(x) * below(x), Math.Min(from, truth), truth) + Simpson(x => (1 - below(x)) * (1 - below(x)), truth, Math.Max(to, truth));

    static double Simpson(Func<double, double> f, double a, double b)
    {
        const int n = 2000;
        var (h, sum) = ((b - a) / n, f(a) + f(b));
        for (var i = 1; i < n; i++) sum += (i % 2 == 0 ? 2 : 4) * f(a + i * h);
        return sum * h / 3;
    }
}
