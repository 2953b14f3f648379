using CsCheck;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;
using WitnessMark.Tests;

namespace WitnessMark.PrintRoom.Tests.Shapes;

[Truth(Grade.Property, "cutting a drawing apart loses nothing and adds nothing")]
public class ClipTests
{
    static readonly Gen<Vec2> s_point = Gen.Select(Gen.Double[0, 100], Gen.Double[0, 100], (x, y) => new Vec2(x, y));

    static readonly Gen<Mark> s_mark = Gen.OneOf<Mark>(
        Gen.Select(s_point, s_point, (a, b) => (Mark)new LineMark(a, b, "A", Stroke.Outline)),
        Gen.Select(s_point, Gen.Double[0.1, 80], (c, r) => (Mark)new CircleMark(c, r, "A", Stroke.Outline)),
        Gen.Select(s_point, Gen.Double[0.1, 80], Gen.Double[-7, 7], Gen.Double[-8, 8], (c, r, start, sweep) => (Mark)new ArcMark(c, r, start, sweep, "A", Stroke.Outline)),
        Gen.Select(s_point, Gen.Double[1, 60], Gen.Double[1, 60], Gen.Double[-3, 3], (c, a, b, turn) => (Mark)new EllipseMark(c, a, b, turn, "A", Stroke.Outline)),
        Gen.Select(s_point.Array[2, 7], Gen.Bool, (points, closed) => (Mark)new PathMark([.. points], closed, false, "A", Stroke.Outline)),
        Gen.Select(s_point, Gen.Double[3, 20], Gen.Double[-3, 3], (at, height, turn) => (Mark)new TextMark(at, "Rg⌀8±", height, "A", Anchor.Middle, turn)));

    static readonly Gen<Box> s_box = Gen.Select(Gen.Double[0, 50], Gen.Double[0, 50], Gen.Double[1, 50], Gen.Double[1, 50], (x, y, w, h) => new Box(x, y, x + w, y + h));

    [Fact]
    public void What_is_inside_stays_and_what_is_outside_goes() =>
        Gen.Select(s_mark, s_box).Sample((mark, box) =>
        {
            var kept = Clip.To(mark, box).ToList();
            (Vec2, Vec2)[] before = [.. Drawn.Pieces(mark)], after = [.. kept.SelectMany(Drawn.Pieces)];
            Assert.All(Drawn.Points(mark, 5).Where(box.Grown(-0.01).Holds), p => Assert.True(Drawn.Near(after, p, 0.01), $"{p} is lost"));
            Assert.All(kept.SelectMany(k => Drawn.Points(k, 5)), p => Assert.True(box.Grown(0.001).Holds(p), $"{p} is outside {box}"));
            Assert.All(kept.SelectMany(k => Drawn.Points(k, 5)), p => Assert.True(Drawn.Near(before, p, 0.01), $"{p} is not on the mark"));
        }, iter: 500);

    [Fact]
    public void Two_halves_are_as_long_as_the_whole() =>
        Gen.Select(s_mark, Gen.Double[1, 99]).Sample((mark, x) =>
        {
            var (left, right) = (new Box(-300, -300, x, 300), new Box(x, -300, 300, 300));
            var halves = Clip.To(mark, left).Concat(Clip.To(mark, right)).Sum(Drawn.Length);
            Assert.Equal(Drawn.Length(mark), halves, mark is EllipseMark or TextMark ? 0.05 : 1e-6);
        }, iter: 1000);

    [Fact]
    public void Arcs_and_circles_stay_arcs_of_the_same_circle() =>
        Gen.Select(s_point, Gen.Double[0.1, 80], s_box).Sample((centre, radius, box) =>
            Assert.All(Clip.To(new CircleMark(centre, radius, "A", Stroke.Outline), box), k =>
                Assert.Equal((centre, radius), k is ArcMark a ? (a.Centre, a.Radius) : (((CircleMark)k).Centre, ((CircleMark)k).Radius))));

    [Fact]
    public void Filled_halves_cover_as_much_as_the_whole() =>
        Gen.Select(s_point.Array[3, 7], Gen.Double[1, 99]).Sample((points, y) =>
        {
            var whole = new PathMark([.. points], true, true, "A", Stroke.Thin);
            var halves = new[] { new Box(-1, -1, 101, y), new Box(-1, y, 101, 101) }.SelectMany(b => Clip.To(whole, b)).Cast<PathMark>();
            Assert.Equal(Drawn.Area(whole), halves.Sum(Drawn.Area), 1e-6);
        });

    [Fact]
    public void A_mark_wholly_inside_is_left_alone() =>
        s_mark.Sample(mark => Assert.Same(mark, Assert.Single(Clip.To(mark, new(-300, -300, 400, 400)))));

    [Fact]
    public void The_box_of_a_mark_is_the_smallest_that_holds_it() =>
        s_mark.Where(m => m is not TextMark).Sample(mark =>
        {
            var (said, walked) = (Box.Of(mark)!.Value, Box.Round(Drawn.Points(mark, 0.5)));
            Assert.True(said.Grown(0.001).Holds(walked));
            Assert.True(walked.Grown(0.1).Holds(said), $"{said} is larger than {walked}");
        });
}
