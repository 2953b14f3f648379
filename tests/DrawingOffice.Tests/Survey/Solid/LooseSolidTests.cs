using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey.Solid;

[Truth(Grade.Property, "freedoms counted by hand on small parts")]
public class LooseSolidTests
{
    static readonly Vec3[] s_places = [new(0, 0, 0), new(60, 5, 0), new(10, 50, 3), new(15, 20, 40), new(50, 40, 25)];

    /// <summary>Five corners with all ten distances, and what is added.</summary>
    static SolidSample Five(SolidFeature[] more, params (SolidReadingKind Kind, string From, string? To, double Value, double Sigma)[] extra)
    {
        var readings = new List<SolidReading>();
        for (var a = 0; a < 5; a++)
            for (var b = a + 1; b < 5; b++) readings.Add(new SolidReading(readings.Count, SolidReadingKind.Distance, $"P{a}", $"P{b}", s_places[a].DistanceTo(s_places[b]), 0.02));
        foreach (var r in extra) readings.Add(new SolidReading(readings.Count, r.Kind, r.From, r.To, r.Value, r.Sigma));
        return new SolidSample("five", "five corners", [.. s_places.Select((p, i) => new SolidFeature($"P{i}", SolidKind.Point) { Sketch = p + new Vec3(1, -1, 0.5 * i) }), .. more], [.. readings]);
    }

    [Fact]
    public void Ten_distances_hold_five_corners_with_one_check()
    {
        var plan = SolidAdjust.Solve(Five([]));
        Assert.Equal((15, 6, 0, 1), (plan.Unknowns, plan.DatumFreedoms, plan.LooseFreedoms, plan.Redundancy));
        Assert.Empty(plan.Mirrors);
        Assert.False(plan.Hand.Told);
    }

    [Fact]
    public void A_plane_with_two_places_is_loose_and_says_why()
    {
        var plan = SolidAdjust.Solve(Five([new("F", SolidKind.Plane) { SketchDirection = new(0, 0, 1) }], (SolidReadingKind.On, "P0", "F", 0, 0), (SolidReadingKind.On, "P1", "F", 0, 0)));
        Assert.Equal(1, plan.LooseFreedoms);
        var group = Assert.Single(plan.Loose);
        Assert.Equal(["F"], group.Ids);
        Assert.Equal("a plane needs three places not in line; F has two (P0, P1) and can still turn about the line through them", group.Reason);
        Assert.True(plan.Of("F").Loose);
        Assert.False(plan.Of("P0").Loose);
        Assert.NotNull(plan.Distance("P0", "P3"));
    }

    [Fact]
    public void A_set_up_with_two_heights_says_what_it_lacks()
    {
        var plan = SolidAdjust.Solve(Five([new("S", SolidKind.SetUp)], (SolidReadingKind.Height, "P0", "S", 10, 0.02), (SolidReadingKind.Height, "P1", "S", 12, 0.02)));
        Assert.Equal(1, plan.LooseFreedoms);
        Assert.Equal("two heights were taken in set-up S: three, of places not in line, tell how the part stood; a fourth begins to check", Assert.Single(plan.Loose).Reason);
    }

    [Fact]
    public void A_hole_that_nothing_sizes_and_a_corner_on_two_distances_are_told_apart()
    {
        SolidFeature[] more = [new("H", SolidKind.Hole) { Sketch = new(30, 30, 0) }, new("Q", SolidKind.Point) { Sketch = new(30, 0, 30) }];
        var h = new Vec3(31, 29, 2);
        (SolidReadingKind, string, string?, double, double)[] extra =
        [
            (SolidReadingKind.Distance, "H", "P0", h.DistanceTo(s_places[0]), 0.02), (SolidReadingKind.Distance, "H", "P1", h.DistanceTo(s_places[1]), 0.02),
            (SolidReadingKind.Distance, "H", "P2", h.DistanceTo(s_places[2]), 0.02), (SolidReadingKind.Distance, "H", "P3", h.DistanceTo(s_places[3]), 0.02),
            (SolidReadingKind.Distance, "Q", "P0", 41, 0.02), (SolidReadingKind.Distance, "Q", "P1", 43, 0.02),
        ];
        var plan = SolidAdjust.Solve(Five(more, extra));
        Assert.Equal(2, plan.LooseFreedoms);
        Assert.Equal(["nothing read gives the diameter of H", "the readings that tie Q (readings 15, 16) leave it one free motion; one more reading is the least that holds it"], plan.Loose.Select(g => g.Reason));
        Assert.Null(plan.Of("H").Size);
        Assert.Null(plan.Distance("Q", "P3"));
    }

    [Fact]
    public void A_corner_on_three_distances_may_lie_on_either_side()
    {
        var q = new Vec3(25, 15, 30);
        var plan = SolidAdjust.Solve(Five([new("Q", SolidKind.Point) { Sketch = q }],
            (SolidReadingKind.Distance, "Q", "P0", q.DistanceTo(s_places[0]), 0.02), (SolidReadingKind.Distance, "Q", "P1", q.DistanceTo(s_places[1]), 0.02), (SolidReadingKind.Distance, "Q", "P2", q.DistanceTo(s_places[2]), 0.02)));
        var mirror = Assert.Single(plan.Mirrors);
        Assert.Equal(["Q"], mirror.Flips);
        var (a, n) = (s_places[0], (s_places[1] - s_places[0]).Cross(s_places[2] - s_places[0]).Unit);
        var image = q - 2 * n.Dot(q - a) * n;
        var decide = mirror.Deciding.First(d => d.From is "P3" || d.To is "P3");
        Assert.Equal(image.DistanceTo(s_places[3]), decide.Second, 0.05);
        Assert.Equal(q.DistanceTo(s_places[3]), decide.First, 0.05);
    }

    [Fact]
    public void A_part_that_hangs_on_three_corners_may_be_turned_through_their_plane()
    {
        Vec3 q = new(25, 15, 30), t = new(40, 25, 22);
        (SolidReadingKind, string, string?, double, double) Gap(string from, Vec3 at, int to) => (SolidReadingKind.Distance, from, $"P{to}", at.DistanceTo(s_places[to]), 0.02);
        var plan = SolidAdjust.Solve(Five([new("Q", SolidKind.Point) { Sketch = q }, new("T", SolidKind.Point) { Sketch = t }],
            Gap("Q", q, 0), Gap("Q", q, 1), Gap("Q", q, 2), Gap("T", t, 0), Gap("T", t, 1), Gap("T", t, 2), (SolidReadingKind.Distance, "Q", "T", q.DistanceTo(t), 0.02)));
        var mirror = Assert.Single(plan.Mirrors);
        Assert.Equal(["Q", "T"], mirror.Flips);
        Assert.Equal(["P0", "P1", "P2"], mirror.About);
    }

    [Fact]
    public void Without_a_sketch_the_same_shape_comes_out()
    {
        var sample = Five([]);
        var blind = sample with { Features = [.. sample.Features.Select(f => f with { Sketch = null })] };
        var plan = SolidAdjust.Solve(blind);
        Assert.InRange(plan.WeightedSumOfSquares, 0, 1e-9);
        foreach (var d in plan.Distances()) Assert.Equal(s_places[d.From[1] - '0'].DistanceTo(s_places[d.To[1] - '0']), d.Distance, 1e-6);
    }

    [Theory]
    [InlineData(SolidReadingKind.Height, "P0", "P1", "reading 11 (height): P1 is a corner; wanted is a set-up.")]
    [InlineData(SolidReadingKind.Distance, "P0", "Z", "reading 11 (distance): there is no feature Z; known are P0, P1, P2, P3, P4.")]
    [InlineData(SolidReadingKind.Diameter, "P0", null, "reading 11 (diameter): P0 is a corner; wanted is a hole or a cylinder.")]
    public void What_makes_no_sense_is_refused_in_one_sentence(SolidReadingKind kind, string from, string? to, string sentence) =>
        Assert.Equal(sentence, Assert.Throws<RefusedException>(() => SolidAdjust.Solve(Five([], (kind, from, to, 5, 0.02)))).Message);
}
