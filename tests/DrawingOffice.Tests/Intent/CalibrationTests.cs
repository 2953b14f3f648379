using System.Collections.Immutable;
using MathNet.Numerics.Distributions;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Intent;

/// <summary>
/// The stated odds against the hit rate. Ten bins of stated probability; the sum over bins of (hits − expected)² over the
/// expected variance is chi-square when the odds are honest (Hosmer and Lemeshow's statistic with the true model, one degree
/// a bin). False alarm 0.001 per case, were the seed not fixed.
/// </summary>
public class CalibrationTests(ITestOutputHelper output)
{
    const int Parts = 1500;
    const double FalseAlarm = 0.001;

    [Theory]
    [Truth(Grade.Property, "Odds are calibrated when nature follows the stated model: Hosmer-Lemeshow statistic over simulated worn parts")]
    [InlineData(Subject.Hole, 11)]
    [InlineData(Subject.Pin, 12)]
    [InlineData(Subject.Sheet, 13)]
    [InlineData(Subject.HolePitch, 14)]
    [InlineData(Subject.Length, 15)]
    [InlineData(Subject.ExternalThread, 16)]
    [InlineData(Subject.InternalThread, 19)]
    [InlineData(Subject.Hole, 20, 3, 1, 500)]
    [InlineData(Subject.Pin, 21, 1, 2, 500)]
    public void Stated_odds_match_the_hit_rate(Subject subject, int seed, int items = 1, int places = 1, int parts = Parts)
    {
        var told = Ask(new Workshop(subject, OriginPrior.Unknown, Practice.Usual, new Chance((ulong)seed), items, places), Practice.Usual, parts: parts);
        Assert.True(Passes("best size", [.. told.Select(t => (t.Told.Best?.Probability ?? 0, Hit(t)))]));
        Assert.True(Passes("off the lists", [.. told.Select(t => (t.Told.OffList, t.Part.Made is null))]));
    }

    [Fact]
    [Truth(Grade.Property, "The check has power: odds that leave wear out are not calibrated on worn parts")]
    public void Odds_that_ignore_wear_are_caught()
    {
        var blind = Practice.Usual with { Allowances = [.. Practice.Usual.Allowances.Select(a => a with { Scales = [0, 0, 0, 0] })] };
        var told = Ask(new Workshop(Subject.Hole, OriginPrior.Unknown, Practice.Usual, new Chance(17)), blind);
        Assert.False(Passes("best size, wear left out", [.. told.Select(t => (t.Told.Best?.Probability ?? 0, Hit(t)))]));
    }

    // Stated probability of the best size less how often it was right: above zero is overconfident.
    internal static double Overconfidence(OriginPrior nature, Practice wear, OriginPrior believed)
    {
        var told = Ask(new Workshop(Subject.Hole, nature, wear, new Chance(18)), Practice.Usual, believed, 1000);
        return told.Average(t => (t.Told.Best?.Probability ?? 0) - (Hit(t) ? 1 : 0));
    }

    static ImmutableArray<(Simulated Part, MadeTo Told)> Ask(Workshop workshop, Practice practice, OriginPrior? believed = null, int parts = Parts) =>
        [.. workshop.Parts(parts).Select(p => (p, Identify.One(p.Question, believed ?? OriginPrior.Unknown, practice)))];

    static bool Hit((Simulated Part, MadeTo Told) t) =>
        t.Part.Made is { } made && t.Told.Best is { } best && best.Candidate.SameAs(made);

    bool Passes(string what, ImmutableArray<(double Stated, bool Hit)> told)
    {
        // The Gaussian approximation wants a few expected hits and misses: thin bins are pooled.
        var bins = told.GroupBy(t => (int)(t.Stated * 10)).GroupBy(g => Variance(g) < 3 ? -1 : g.Key, g => g).Select(g => g.SelectMany(b => b).ToArray()).ToArray();
        var statistic = bins.Sum(bin => Math.Pow(bin.Count(t => t.Hit) - bin.Sum(t => t.Stated), 2) / Math.Max(1, Variance(bin)));
        var bound = ChiSquared.InvCDF(bins.Length, 1 - FalseAlarm);
        output.WriteLine($"{what}: chi-square {statistic:0.0}, {bins.Length} degrees, bound {bound:0.0}");
        return statistic < bound;
    }

    static double Variance(IEnumerable<(double Stated, bool Hit)> bin) => bin.Sum(t => t.Stated * (1 - t.Stated));
}
