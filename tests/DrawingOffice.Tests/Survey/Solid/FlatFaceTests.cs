using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey.Solid;

[Truth(Grade.Property, "a flat survey laid on a face in space says what it said flat; errors planted in brackets of known truth")]
public class FlatFaceTests
{
    static readonly SolidFeature s_face = new("F", SolidKind.Plane) { Sketch = new(5, 6, 7), SketchDirection = new(0.2, 0.3, 1) };

    [Theory, InlineData(1UL), InlineData(2UL)]
    public void Alone_on_its_face_a_flat_survey_gives_the_flat_plan(ulong seed)
    {
        var flat = Simulated.Plate(9, 4, new Chance(seed));
        var alone = Adjust.Solve(flat, searchMirrors: false);
        var plan = SolidAdjust.Solve(new SolidSample("s", "", [s_face], []) { Faces = [new FlatFace("F", flat) { Along = new Vec3(1, 0, 0) }] }, searchMirrors: false);
        Assert.Equal(alone.Redundancy, plan.Redundancy);
        Assert.Equal(alone.WeightedSumOfSquares, plan.WeightedSumOfSquares, 1e-6);
        foreach (var (a, b) in alone.Distances().Zip(plan.Distances()))
        {
            Assert.Equal((a.From, a.To), (b.From, b.To));
            Assert.Equal(a.Distance, b.Distance, 1e-6);
            Assert.Equal(a.Std, b.Std, 1e-6);
        }
    }

    [Fact]
    public void Heights_that_just_fix_a_set_up_leave_the_flat_face_as_it_was()
    {
        var flat = Simulated.Plate(6, 4, new Chance(4));
        var alone = Adjust.Solve(flat, searchMirrors: false);
        SolidReading[] heights = [.. Enumerable.Range(0, 3).Select(i => new SolidReading(i, SolidReadingKind.Height, $"H{i}", "S", 20 + 3 * i, 0.02))];
        var plan = SolidAdjust.Solve(new SolidSample("s", "", [s_face, new("S", SolidKind.SetUp) { SketchDirection = new(0, 0, 1) }], [.. heights])
        {
            Faces = [new FlatFace("F", flat) { Along = new Vec3(1, 0, 0) }],
        }, searchMirrors: false);
        Assert.Equal(alone.Redundancy, plan.Redundancy);
        Assert.Equal(0, plan.LooseFreedoms);
        foreach (var (a, b) in alone.Distances().Zip(plan.Distances())) Assert.Equal((a.Distance, a.Std), (Math.Round(b.Distance - a.Distance, 6) + a.Distance, Math.Round(b.Std - a.Std, 6) + a.Std));
    }

    /// <summary>The base of a bracket surveyed flat with nothing to spare; heights and lengths in space are what checks it.</summary>
    [Fact]
    public void A_misreading_on_the_flat_face_is_found_by_the_heights()
    {
        var truth = Brackets.Shape();
        var whole = Brackets.Measured(new Chance(11), truth);
        string[] onBase = ["a1", "a2", "a3", "a4"];
        Vec2 Flat(string id) => new(truth.Places[id].Y, truth.Places[id].X);
        SolidReading[] kept = [.. whole.Readings.Where(r => !(r.Kind == SolidReadingKind.Distance && onBase.Contains(r.From) && onBase.Contains(r.To))).Select((r, i) => r with { Index = i })];
        (string, string)[] pairs = [("a1", "a2"), ("a1", "a3"), ("a2", "a3"), ("a1", "a4"), ("a3", "a4")];
        var flat = new Sample("base", "", [.. onBase.Select(id => new Feature(id, FeatureKind.Point) { Sketch = Flat(id) })],
            [.. pairs.Select((p, i) => new Reading(i, ReadingKind.CentreDistance, p.Item1, p.Item2, Flat(p.Item1).DistanceTo(Flat(p.Item2)) + (i == 1 ? 0.5 : 0), 0.02))]);
        var plan = SolidAdjust.Solve(whole with { Readings = [.. kept], Faces = [new FlatFace("A", flat)] }, searchMirrors: false);
        var found = Assert.Single(plan.Doubts.Indices);
        Assert.Equal(("A", 1), (plan.Sample.Readings[found].FlatFace, plan.Sample.Readings[found].FlatIndex));
        Assert.Empty(Adjust.Solve(flat, searchMirrors: false).Doubts.Indices);
    }

    [Fact]
    public void Places_read_on_a_face_tell_the_hand()
    {
        var flat = new Sample("base", "", [.. Enumerable.Range(0, 4).Select(i => new Feature($"P{i}", FeatureKind.Point) { Sketch = new Vec2(30 * (i % 2), 20 * (i / 2) + i) })],
            [.. Enumerable.Range(0, 4).Select(i => new Reading(i, ReadingKind.Picked, $"P{i}", null, 100 + 30 * (i % 2), 0.1) { ValueY = 20 * (i / 2) + i })]);
        var plan = SolidAdjust.Solve(new SolidSample("s", "", [s_face], []) { Faces = [new FlatFace("F", flat) { Along = new Vec3(1, 0, 0) }] });
        Assert.True(plan.Hand.Told);
        Assert.Equal(0, plan.LooseFreedoms);
        // Seen from outside, P1 lies in x and P2 in y of P0.
        var (p0, p1, p2) = (plan.Of("P0").At, plan.Of("P1").At, plan.Of("P2").At);
        Assert.True((p1 - p0).Cross(p2 - p0).Dot(plan.Of("F").Direction) > 0);
    }

    [Fact]
    public void A_slot_is_refused_in_one_sentence()
    {
        var flat = new Sample("base", "", [new Feature("S", FeatureKind.Slot)], []);
        Assert.Equal("face F, S: a slot cannot join a survey in space yet; give its end centres as holes or leave it out.",
            Assert.Throws<RefusedException>(() => SolidAdjust.Solve(new SolidSample("s", "", [s_face], []) { Faces = [new FlatFace("F", flat)] })).Message);
    }
}
