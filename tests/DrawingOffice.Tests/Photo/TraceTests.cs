using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.DrawingOffice.Photo.Edges;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.DrawingOffice.Photo.Tracing;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Photo;

/// <summary>Edges followed between clicks, and what is made of them.</summary>
[Truth(Grade.SecondImplementation, "a renderer of the tests' own: pinhole, samples, blur, noise")]
public class TraceTests
{
    /// <summary>A plate with a round end: straights at y = ±20 from x = −50 to 30, half a circle of radius 20 about (30, 0).</summary>
    static readonly ImmutableArray<Vec2> s_round = [new(-50, -20), new(30, -20), .. Enumerable.Range(1, 179).Select(k => new Vec2(30, 0) + Vec2.Polar((k - 90) * Math.PI / 180, 20)), new(30, 20), new(-50, 20)];

    static (TruePhoto Photo, Pinhole Camera) Round()
    {
        var camera = TrueTests.Over(20, 50, 15);
        return (MakeTrue.Of(Rendered.Picture(new Scene(Target.A4, new Plate(s_round, [])), camera, 31), TrueTests.Measured).Value, camera);
    }

    [Fact]
    public void The_way_between_two_clicks_keeps_to_the_edge()
    {
        var (photo, camera) = Round();
        Vec2 from = camera.Project(new Vec2(-40, -20)), to = camera.Project(new Vec2(-40, 20));
        // Round the end, far off the straight line between the clicks; two clicks on the way as a hand would set them.
        Vec2[] clicks = [from, camera.Project(new Vec2(20, -20)), camera.Project(new Vec2(50, 0)), camera.Project(new Vec2(20, 20)), to];
        for (var k = 0; k + 1 < clicks.Length; k++)
            foreach (var p in Snap.Path(photo.Light, clicks[k], clicks[k + 1]))
            {
                var mm = photo.ToFace(p);
                var off = mm.X > 30 ? Math.Abs(mm.DistanceTo(new(30, 0)) - 20) : Math.Abs(Math.Abs(mm.Y) - 20);
                Assert.InRange(off * photo.Camera.PixelsPerMm(mm), 0, 2.5);
            }
    }

    [Fact]
    public void A_click_beside_an_edge_is_drawn_to_it()
    {
        var (photo, camera) = Round();
        var drawn = photo.ToFace(Snap.Point(photo.Light, camera.Project(new Vec2(-10, -21.2))));
        Assert.InRange(Math.Abs(drawn.Y + 20), 0, 0.3);
        var even = new Vec2(camera.Project(new Vec2(0, 0)).X, camera.Project(new Vec2(0, 0)).Y);
        Assert.Equal(even, Snap.Point(photo.Light, even, 4));
    }

    [Theory]
    [InlineData(2.5, -2)]
    [InlineData(-3, 1)]
    [InlineData(0, 3.5)]
    public void A_touch_beside_a_corner_is_drawn_to_it(double x, double y)
    {
        var (photo, camera) = Round();
        var corner = camera.Project(new Vec2(-50, 20));
        Assert.InRange(Corner.Near(photo.Light, corner + new Vec2(x, y)).DistanceTo(corner), 0, 0.6);
    }

    [Fact]
    public void A_touch_beside_an_edge_is_drawn_square_on_to_it_and_on_even_ground_stays()
    {
        var (photo, camera) = Round();
        var drawn = photo.ToFace(Corner.Near(photo.Light, camera.Project(new Vec2(-10, -20.7))));
        Assert.InRange(Math.Abs(drawn.Y + 20), 0, 0.1);
        Assert.InRange(Math.Abs(drawn.X + 10), 0, 0.2);
        foreach (var even in new[] { camera.Project(new Vec2(0, 0)), camera.Project(new Vec2(0, 60)) }) Assert.Equal(even, Corner.Near(photo.Light, even));
    }

    [Fact]
    public void Straights_and_a_round_end_are_told_apart_and_fitted()
    {
        var (photo, camera) = Round();
        Vec2[] clicks = [new(-50, -20), new(0, -20), new(50, 0), new(0, 20), new(-50, 20)];
        var path = clicks.SelectMany((c, k) => Snap.Path(photo.Light, camera.Project(c), camera.Project(clicks[(k + 1) % 5]))).ToImmutableArray();
        var outline = Outline.Of(photo, path, true).Value;
        Assert.Equal(4, outline.Sides.Length);
        var arc = Assert.Single(outline.Sides, s => !s.Straight);
        Assert.InRange(Math.Abs(arc.Radius!.Value.Value - 20), 0, 3 * arc.Radius.Value.Std);
        Assert.InRange(arc.Radius.Value.Std, 0, 0.05);
        Assert.InRange(arc.Centre!.Value.At.DistanceTo(new(30, 0)), 0, 0.05);
        Assert.InRange(arc.From.At.DistanceTo(new(30, arc.From.At.Y > 0 ? 20 : -20)), 0, 1.0);
        // Edge points keep to the edge.
        Assert.All(outline.Edge.Where(p => p.X is > -45 and < 25), p => Assert.InRange(Math.Abs(Math.Abs(p.Y) - 20), 0, 0.15));
    }

    [Fact]
    public void A_closed_trace_that_begins_in_the_middle_of_a_side_gives_that_side_once()
    {
        var (photo, camera) = Round();
        Vec2[] clicks = [new(-10, -20), new(30, -20), new(50, 0), new(30, 20), new(-50, 20), new(-50, -20)];
        var path = clicks.SelectMany((c, k) => Snap.Path(photo.Light, camera.Project(c), camera.Project(clicks[(k + 1) % 6]))).ToImmutableArray();
        Assert.Equal(4, Outline.Of(photo, path, true).Value.Sides.Length);
    }

    [Fact]
    public void An_open_trace_has_loose_ends()
    {
        var (photo, camera) = Round();
        var outline = Outline.Of(photo, Snap.Path(photo.Light, camera.Project(new Vec2(-40, -20)), camera.Project(new Vec2(20, -20))), false).Value;
        var side = Assert.Single(outline.Sides);
        Assert.Empty(outline.Corners);
        Assert.Equal(0, side.Direction.Value, 0.002);
        // Across the edge as sharp as the edge, along it as the click.
        Assert.True(side.From.Spread.Ellipse.Major > 8 * side.From.Spread.Ellipse.Minor);
    }

    [Fact]
    [Truth(Grade.CommonPractice, "house rule: a refusal names field, value and what would be right")]
    public void Traces_and_holes_where_nothing_is_seen_are_refused()
    {
        var (photo, camera) = Round();
        var paper = camera.Project(new Vec2(0, 60));
        Assert.Contains("stands out", Outline.Of(photo, [paper, paper + new Vec2(100, 0)], false).Refusal!.Sentence, StringComparison.Ordinal);
        Assert.Contains("within the picture", Outline.Of(photo, [paper, new(-5, 3)], false).Refusal!.Sentence, StringComparison.Ordinal);
        Assert.Contains("two places", Outline.Of(photo, [paper], false).Refusal!.Sentence, StringComparison.Ordinal);
        Assert.Contains("in the picture", HoleFit.Of(photo, new(-4, 4)).Refusal!.Sentence, StringComparison.Ordinal);
        Assert.Contains("hole:", HoleFit.Of(photo, camera.Project(new Vec2(-20, 0)), 30).Refusal!.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Noise_inside_a_hole_is_not_taken_for_its_rim()
    {
        var camera = new Pinhole(1600, 1200, 3000, 20, 70, 95, 480);
        var scene = new Scene(Target.A4, new Plate([new(-60, -90), new(60, -90), new(60, 90), new(-60, 90)], [(new(0, 10), 20)]));
        var picture = Rendered.Picture(scene, camera, 32, 6);
        // The marks lie outside so near a view: four places are picked by hand.
        Vec2[] places = [new(-50, -40), new(50, -40), new(50, 60), new(-50, 60)];
        var photo = MakeTrue.Of(picture, TrueTests.Measured with { Corners = [.. places.Select(p => new Tie(camera.Project(p), p))], CornerStd = 0.3, Height = new(0, 0) }).Value;
        var hole = HoleFit.Of(photo, camera.Project(new Vec2(3, 12))).Value;
        Assert.Equal(20, hole.Diameter.Value, 0.1);
        Assert.InRange(hole.Centre.At.DistanceTo(new(0, 10)), 0, 0.05);
    }

    [Fact]
    public void A_round_off_a_photograph_is_not_taken_to_check_itself()
    {
        // Two corners, the centre and the radius of one traced round: found along one edge, so that they agree as they must.
        NamedPick At(string id, double x, double y) => new(id, FeatureKind.Point, new Spot(new(x, y), Spread.Round(0.05), false));
        NamedPick[] picks = [At("A", 10, 0), At("B", 0, 10), At("C", -30, 0), new("R", FeatureKind.Arc, new Spot(Vec2.Zero, Spread.Round(0.08), false), new(10, 0.04)) { BetweenCorners = true }];
        Plan Solve(bool photograph, params Reading[] more)
        {
            var readings = PhotoReadings.Of(picks, new(0.001), "photo");
            return Adjust.Solve(new Sample("p", "p", [.. picks.Select(p => new Feature(p.Id, p.Kind) { From = p.Id == "R" ? "A" : null, To = p.Id == "R" ? "B" : null })], [.. readings, .. more])
            { Frames = photograph ? [new PickFrame("photo", 0.001)] : [] });
        }
        var alone = Solve(photograph: true);
        Assert.Equal(0, alone.Redundancy);
        Assert.True(alone.Global.Passes);
        // The radius stays as unsure as it was seen.
        Assert.InRange(alone.Features.Single(f => f.Id == "R").Size!.Value.Std, 0.037, 0.0413);
        // Picks of a hand on squared paper were each made for themselves.
        Assert.Equal(2, Solve(photograph: false).Redundancy);
        Reading Calliper(double mm) => new(5, ReadingKind.CentreDistance, "A", "C", mm, 0.025);
        var checkedOnce = Solve(true, Calliper(40.03));
        Assert.Equal((1, true), (checkedOnce.Redundancy, checkedOnce.Global.Passes));
        Assert.False(Solve(true, Calliper(41)).Global.Passes);
    }

    [Fact]
    public void Picks_become_readings_of_a_frame_and_the_survey_gives_true_distances()
    {
        var (photo, camera) = (BenchPlate.Photo(1, 9), BenchPlate.Camera(1));
        NamedPick[] picks = [.. BenchPlate.Holes.Select((h, k) => NamedPick.Of($"H{k}", HoleFit.Of(photo, camera.Project(h.At, 2)).Value))];
        var readings = PhotoReadings.Of(picks, photo.Scale, "first picture", 3);
        Assert.Equal(10, readings.Length);
        Assert.Equal([3, 4, 5], readings.Take(3).Select(r => r.Index));
        Assert.All(readings, r => Assert.True(r.Sigma > 0 && r.Instrument == "photograph"));
        var sample = new Sample("plate", "plate", [.. picks.Select(p => new Feature(p.Id, FeatureKind.Hole))], PhotoReadings.Of(picks, photo.Scale, "first picture"));
        var plan = Adjust.Solve(sample);
        foreach (var d in plan.Distances())
        {
            var real = BenchPlate.Holes[d.From[1] - '0'].At.DistanceTo(BenchPlate.Holes[d.To[1] - '0'].At);
            Assert.InRange(Math.Abs(d.Distance - real), 0, 4 * Math.Sqrt(d.Std * d.Std + real * real * photo.Scale.Std * photo.Scale.Std));
        }
    }
}
