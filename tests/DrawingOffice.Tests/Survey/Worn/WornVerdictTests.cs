using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;
using static WitnessMark.DrawingOffice.Tests.Survey.Worn.WornPlates;

namespace WitnessMark.DrawingOffice.Tests.Survey.Worn;

[Truth(Grade.Property, "what one side of a bound can and cannot say")]
public class WornVerdictTests
{
    static Sample Plate() => Rusted(new Chance(42), 0.3, told: true);

    static int EdgeReading(Sample s, string hole, string edge) => s.Readings.First(r => r.Kind == ReadingKind.EdgeToHole && r.From == hole && r.To == edge).Index;

    [Fact]
    public void A_reading_far_on_the_worn_side_is_never_accused()
    {
        var sample = Plate();
        var row = EdgeReading(sample, "H1", "left");
        var plan = Adjust.Solve(Simulated.WithError(sample, row, -8), searchMirrors: false);
        Assert.Empty(plan.Doubts.Indices);
        Assert.Equal(0, plan.Readings[row].Normalised);
        Assert.InRange(plan.Readings[row].RedundancyNumber, 0, 0.01);
        Assert.Equal(MadeBound.AtLeast, plan.Readings[row].Says);
    }

    [Fact]
    public void A_reading_on_the_impossible_side_is_accused()
    {
        // Two sound marks that lie on the edge as made say where it was; the rest of it has rusted.
        var sample = Plate();
        var row = EdgeReading(sample, "H1", "left");
        Vec2[] holes = [new(20, 20), new(100, 18), new(97, 62), new(23, 60)];
        var readings = sample.Readings.ToBuilder();
        foreach (var (mark, at) in new[] { ("P", new Vec2(0, 10)), ("Q", new Vec2(0, 70)) })
        {
            readings.Add(Take(readings.Count, ReadingKind.On, mark, "left", 0, 0));
            for (var h = 0; h < 4; h++) readings.Add(Take(readings.Count, ReadingKind.CentreDistance, mark, $"H{h}", at.DistanceTo(holes[h])));
        }
        sample = sample with
        {
            Features = [.. sample.Features, new("P", FeatureKind.Point) { Sketch = new(0, 10) }, new("Q", FeatureKind.Point) { Sketch = new(0, 70) }],
            Readings = readings.ToImmutable(),
        };
        var plan = Adjust.Solve(Simulated.WithError(sample, row, 1), searchMirrors: false);
        Assert.Equal([row], plan.Doubts.Indices);
        Assert.Equal([row], plan.Doubts.Alone);
        Assert.InRange(plan.Readings[row].WouldRead!.Value - sample.Readings[row].Value, -0.2, 1.5);
    }

    [Fact]
    public void A_sound_misreading_is_still_found_beside_worn_ones()
    {
        var sample = Plate();
        var row = sample.Readings.First(r => r.Kind == ReadingKind.OutsideOverHoles).Index;
        Assert.Contains(row, Adjust.Solve(Simulated.WithError(sample, row, 3), searchMirrors: false).Doubts.Indices);
    }

    [Fact]
    public void A_lone_worn_reading_checks_nothing_and_bounds_the_hole_from_above()
    {
        var sample = new Sample("d", "", [new("H", FeatureKind.Hole) { Sketch = new(0, 0), Condition = FeatureCondition.Worn }], [Take(0, ReadingKind.Diameter, "H", null, 10.4)]);
        var plan = Adjust.Solve(sample);
        Assert.Equal((MadeBound.AtMost, 0.0, (double?)null), (plan.Readings[0].Says, plan.Readings[0].RedundancyNumber, plan.Readings[0].Normalised));
        Assert.Null(plan.Readings[0].WouldRead);
        Assert.Equal(10.4 - UsualWear.Of(FeatureCondition.Worn), plan.Of("H").Size!.Value.Value, 9);
        Assert.Equal(double.Hypot(Sigma, 0.2), plan.Of("H").Size!.Value.Std, 9);
    }

    [Fact]
    public void Bent_counts_either_way_and_repaired_counts_in_full()
    {
        Plan Solve(FeatureCondition condition) => Adjust.Solve(new Sample("d", "",
            [new("H", FeatureKind.Hole) { Sketch = new(0, 0), Condition = condition }], [Take(0, ReadingKind.Diameter, "H", null, 10.4)]));
        var (bent, repaired) = (Solve(FeatureCondition.Bent), Solve(FeatureCondition.Repaired));
        Assert.Equal((10.4, MadeBound.About), (bent.Of("H").Size!.Value.Value, bent.Readings[0].Says));
        Assert.Equal(double.Hypot(Sigma, 2), bent.Of("H").Size!.Value.Std, 9);
        Assert.Equal((10.4, MadeBound.Nothing), (repaired.Of("H").Size!.Value.Value, repaired.Readings[0].Says));
        Assert.Equal(Sigma, repaired.Of("H").Size!.Value.Std, 9);
        Assert.Equal(FeatureCondition.Repaired, repaired.Of("H").Condition);
    }

    [Theory, InlineData(0.0), InlineData(-1.0), InlineData(double.NaN), InlineData(51.0)]
    public void A_wear_that_cannot_be_is_refused(double wear)
    {
        var sample = new Sample("d", "", [new("H", FeatureKind.Hole) { Condition = FeatureCondition.Worn, Wear = wear }], []);
        Assert.Contains("feature H: a wear of", Assert.Throws<RefusedException>(() => Adjust.Solve(sample)).Message, StringComparison.Ordinal);
        var sound = sample with { Features = [sample.Features[0] with { Condition = FeatureCondition.Sound, Wear = 1 }] };
        Assert.Contains("not worn, rusted or bent", Assert.Throws<RefusedException>(() => Adjust.Solve(sound)).Message, StringComparison.Ordinal);
    }
}
