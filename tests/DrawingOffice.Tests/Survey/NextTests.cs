using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey;

[Truth(Grade.Property, "what is foretold for a reading is what comes out when it is taken")]
public class NextTests
{
    [Fact]
    public void The_foretold_gain_is_what_a_new_adjustment_gives()
    {
        var sample = Simulated.Plate(12, 4, new Chance(11));
        var plan = Adjust.Solve(sample);
        var advice = Next.Advise(plan, 0.001, most: 3);
        var best = advice.Readings[0];
        var taken = sample with { Readings = sample.Readings.Add(new Reading(sample.Readings.Length, best.Kind, best.From, best.To, best.Expected, 0.02)) };
        var after = Next.Advise(Adjust.Solve(taken), 0.001);
        Assert.Equal(advice.LargestStd - best.Gain, after.LargestStd, 1e-6);
        Assert.True(best.Gain > 0);
    }

    [Fact]
    public void No_other_reading_lowers_the_largest_uncertainty_more()
    {
        var sample = Simulated.Plate(7, 4, new Chance(12));
        var plan = Adjust.Solve(sample);
        var best = Next.Advise(plan, 0.001, most: 1).Readings[0];
        foreach (var other in Next.Advise(plan, 0.001, most: 10_000).Readings)
        {
            var taken = sample with { Readings = sample.Readings.Add(new Reading(sample.Readings.Length, other.Kind, other.From, other.To, other.Expected, 0.02)) };
            var left = Next.Advise(Adjust.Solve(taken), 0.001).LargestStd;
            Assert.True(left >= Next.Advise(plan, 0.001).LargestStd - best.Gain - 1e-9);
        }
    }

    [Fact]
    public void A_loose_hole_is_held_by_the_first_reading_advised()
    {
        var (sample, _) = Plates.Load("plate-03-loose-hole");
        var best = Next.Advise(Adjust.Solve(sample), 0.1).Readings[0];
        Assert.Contains("H4", new[] { best.From, best.To });
        var taken = sample with { Readings = sample.Readings.Add(new Reading(sample.Readings.Length, best.Kind, best.From, best.To, best.Expected, 0.02)) };
        Assert.Equal(0, Adjust.Solve(taken).LooseFreedoms);
    }

    [Fact]
    public void A_mirrored_hole_is_decided_by_the_first_reading_advised()
    {
        var (sample, _) = Plates.Load("plate-04-mirror");
        var best = Next.Advise(Adjust.Solve(sample), 0.1).Readings[0];
        var taken = sample with { Readings = sample.Readings.Add(new Reading(sample.Readings.Length, best.Kind, best.From, best.To, best.Expected, 0.02)) };
        Assert.Empty(Adjust.Solve(taken).Mirrors);
    }

    [Fact]
    public void Enough_is_said_when_every_dimension_is_within_the_wanted_uncertainty()
    {
        var plan = Adjust.Solve(Plates.Load("plate-01-clean").Sample);
        Assert.False(Next.Advise(plan, 0.01).Enough);
        Assert.True(Next.Advise(plan, 0.06).Enough);
    }
}
