using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey.Solid;

[Truth(Grade.Property, "what is foretold of a reading must come true when it is taken")]
public class SolidNextTests
{
    static SolidSample Taken(SolidSample sample, SolidNextReading next, double std) =>
        sample with { Readings = sample.Readings.Add(new SolidReading(sample.Readings.Length, next.Kind, next.From, next.To, next.Expected, std)) };

    [Fact]
    public void The_best_reading_lowers_the_largest_uncertainty_as_foretold()
    {
        var sample = Brackets.Measured(new Chance(21));
        var plan = SolidAdjust.Solve(sample, searchMirrors: false);
        var advice = SolidNext.Advise(plan, 0.001);
        var best = advice.Readings[0];
        Assert.False(advice.Enough);
        Assert.True(best.Gain > 0);
        var std = SolidNext.Usual.First(i => i.Instrument == best.Instrument).Std;
        var after = SolidNext.Advise(SolidAdjust.Solve(Taken(sample, best, std), searchMirrors: false), 0.001);
        Assert.Equal(advice.LargestStd - best.Gain, after.LargestStd, 0.02 * advice.LargestStd);
    }

    [Fact]
    public void A_loose_corner_is_held_by_the_first_reading_named()
    {
        var truth = Brackets.Shape();
        var whole = Brackets.Measured(new Chance(22), truth);
        // The second flange corner loses its heights and its face and hangs on two lengths.
        var sample = whole with { Readings = [.. whole.Readings.Where(r => !(r.From == "c2" && r.Kind is SolidReadingKind.Height or SolidReadingKind.On)).Where(r => r.From != "c2").Select((r, i) => r with { Index = i })] };
        var plan = SolidAdjust.Solve(sample, searchMirrors: false);
        Assert.Equal(1, plan.LooseFreedoms);
        var advice = SolidNext.Advise(plan, 0.05);
        Assert.StartsWith("c2", advice.Words);
        var held = SolidAdjust.Solve(Taken(sample, advice.Readings[0], 0.02), searchMirrors: false);
        Assert.Equal(0, held.LooseFreedoms);
    }

    [Fact]
    public void When_every_dimension_is_within_its_wanted_range_it_is_enough() =>
        Assert.True(SolidNext.Advise(SolidAdjust.Solve(Brackets.Measured(new Chance(23)), searchMirrors: false), 1).Enough);

    /// <summary>B leans away from the base: a bevel in the corner shows more than a right angle, the normals' angle is less.</summary>
    [Theory, InlineData(0.26), InlineData(-0.26)]
    public void An_angle_between_faces_is_told_as_a_bevel_shows_it(double lean)
    {
        var whole = Brackets.Measured(new Chance(24), Brackets.Shape(lean));
        var sample = whole with { Readings = [.. whole.Readings.Where(r => r.Kind != SolidReadingKind.Angle).Select((r, i) => r with { Index = i })] };
        var plan = SolidAdjust.Solve(sample, searchMirrors: false);
        Assert.Equal(Math.PI / 2 + lean, plan.Setting("A", "B")!.Value.Value, 5 * plan.Setting("A", "B")!.Value.Std);
        var next = SolidNext.Advise(plan, 1e-4, most: 20, [new Reach("protractor", 0, 0.0005, Angles: true)]).Readings.First(r => (r.From, r.To) == ("A", "B"));
        Assert.Equal(Math.PI / 2 + lean, next.Expected, 0.01);
    }
}
