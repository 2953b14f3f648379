using CsCheck;
using WitnessMark.DrawingOffice.Transitions;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Transitions;

public class SkinTests
{
    [Fact]
    [Truth(Grade.Property, "a flat piece folded up again by its angles alone gives the shape back; every triangle keeps its three sides")]
    public void Random_ends_lie_flat_and_fold_up_again()
    {
        Gen.ULong.Sample(seed =>
        {
            var chance = new Chance(seed);
            var (_, made) = Shapes.Skin(Shapes.RandomEnd(chance, 0), Shapes.RandomEnd(chance, 130));
            var flat = Flatten.Of(made.Strip);
            Assert.InRange(Flatten.Error(made.Strip, flat), 0, 1e-9);
            for (var i = 0; i + 1 < flat.Rungs.Length; i++)
            {
                var (r, n) = (flat.Rungs[i], flat.Rungs[i + 1]);
                Same(made.Strip.First[r.First].DistanceTo(made.Strip.Second[r.Second]), flat.First[r.First].DistanceTo(flat.Second[r.Second]));
                Same(made.Strip.First[n.First].DistanceTo(made.Strip.Second[n.Second]), flat.First[n.First].DistanceTo(flat.Second[n.Second]));
                if (n.First > r.First) Same(made.Strip.First[r.First].DistanceTo(made.Strip.First[n.First]), flat.First[r.First].DistanceTo(flat.First[n.First]));
                else Same(made.Strip.Second[r.Second].DistanceTo(made.Strip.Second[n.Second]), flat.Second[r.Second].DistanceTo(flat.Second[n.Second]));
            }
        }, iter: 400);
    }

    static void Same(double a, double b) => Assert.InRange(a - b, -1e-9, 1e-9);

    [Fact]
    [Truth(Grade.Property, "the tight skin is the side of the convex hull: no point of either rim lies outside any of its planes")]
    public void No_rim_stands_out_of_the_skin()
    {
        Gen.ULong.Sample(seed =>
        {
            var chance = new Chance(seed);
            var (skin, made) = Shapes.Skin(Shapes.RandomEnd(chance, 0), Shapes.RandomEnd(chance, 130), 0.05);
            var rims = new[] { skin.First, skin.Second }.SelectMany(r => Enumerable.Range(0, 40 * r.Count).Select(k => r.At(k / 40.0))).ToArray();
            foreach (var (a, b, c) in Shapes.Triangles(made.Strip))
            {
                var normal = (b - a).Cross(c - a);
                // Slivers have no direction worth testing.
                if (normal.Length < 1e-3) continue;
                Assert.InRange(rims.Max(p => (p - a).Dot(normal.Unit)), double.NegativeInfinity, 0.05 + 1e-6);
            }
        }, iter: 150);
    }

    [Fact]
    [Truth(Grade.Property, "condition of a developable ruled surface: tangent, tangent and element lie in one plane, det = 0")]
    public void Elements_between_two_curves_touch_both_in_one_plane()
    {
        Gen.ULong.Sample(seed =>
        {
            var chance = new Chance(seed);
            var first = Shapes.At(new OvalForm(60 + 60 * chance.Uniform(), 60 + 60 * chance.Uniform()), 0, 0, 0);
            var second = Shapes.At(new OvalForm(60 + 30 * chance.Uniform(), 60 + 30 * chance.Uniform()), 20, -10, 110, 30 * chance.Uniform(), 30 * chance.Uniform());
            var (skin, made) = Shapes.Skin(first, second);
            foreach (var e in made.Elements)
            {
                var ((i, s), (k, t)) = (skin.First.Split(e.First), skin.Second.Split(e.Second));
                var r = (skin.Second.At(e.Second) - skin.First.At(e.First)).Unit;
                Assert.InRange(skin.First.Sides[i].Along(s).Cross(skin.Second.Sides[k].Along(t)).Dot(r), -1e-9, 1e-9);
            }
        }, iter: 200);
    }

    [Fact]
    [Truth(Grade.Property, "Minkowski: between a convex polygon (area A, perimeter P) and a parallel circle the hull holds h/3 (A + π r² + P r/2)")]
    public void A_polygon_to_round_holds_what_mixed_areas_say()
    {
        foreach (var sides in new[] { 3, 4, 5, 8 })
        {
            var (_, made) = Shapes.Skin(Shapes.At(Shapes.Polygon(sides, 70, 0.3), 0, 0, 0), Shapes.At(new RoundForm(50), 15, -20, 90), 0.0005);
            var (area, perimeter) = (sides / 2.0 * 70 * 70 * Math.Sin(Math.Tau / sides), 2 * sides * 70 * Math.Sin(Math.PI / sides));
            var wanted = 90.0 / 3 * (area + Math.PI * 25 * 25 + perimeter * 25 / 2);
            Assert.InRange(Shapes.Volume(made.Strip) / wanted, 1 - 1e-5, 1);
        }
    }

    [Fact]
    [Truth(Grade.Property, "chord error and shortfall of an edge against its arc length by quadrature, both within what was asked")]
    public void The_stated_error_is_kept_and_not_bought_too_dear()
    {
        Gen.ULong.Sample(seed =>
        {
            var chance = new Chance(seed);
            var (first, second) = (Shapes.RandomEnd(chance, 0), Shapes.RandomEnd(chance, 130));
            var (skin, made) = Shapes.Skin(first, second, 0.05);
            Assert.InRange(Math.Max(made.FirstShort, made.SecondShort), -1e-9, 0.05);
            foreach (var (rim, edge) in new[] { (skin.First, made.Strip.First), (skin.Second, made.Strip.Second) })
                for (var k = 0; k < 200 * rim.Count; k++)
                    Assert.InRange(Near(rim.At(k / 200.0), edge), 0, made.Chord * (1 + 1e-6) + 1e-9);
        }, iter: 40);
        static double Near(Vec3 p, IReadOnlyList<Vec3> edge) => Enumerable.Range(1, edge.Count - 1).Min(i =>
        {
            var d = edge[i] - edge[i - 1];
            var t = Math.Clamp((p - edge[i - 1]).Dot(d) / d.Dot(d), 0, 1);
            return p.DistanceTo(edge[i - 1] + d * t);
        });
    }

    [Fact]
    [Truth(Grade.Property, "two parallel coaxial circles: the triangulated skin goes to the exact sector as the error goes to nothing")]
    public void A_round_to_round_comes_out_as_the_sector_of_a_frustum()
    {
        var cone = new Cone(60, 35, 90, Vec2.Zero);
        var last = double.PositiveInfinity;
        foreach (var error in new[] { 0.5, 0.05, 0.005 })
        {
            var (_, made) = Shapes.Skin(Shapes.At(new RoundForm(120), 0, 0, 0), Shapes.At(new RoundForm(70), 0, 0, 90), error);
            var flat = Flatten.Of(made.Strip);
            var across = flat.First[0].DistanceTo(flat.First[^1]);
            var exact = 2 * cone.Reach(0) * Math.Sin(cone.Opening(0, Math.Tau) / 2);
            var off = Math.Abs(across - exact);
            Assert.True(off < error && off < last / 5, $"{off} at {error}");
            last = off;
        }
    }

    [Fact]
    [Truth(Grade.CommonPractice, "a square to round is set out as four flat triangles and four fans about the corners")]
    public void A_square_to_round_is_four_flats_and_four_fans()
    {
        var (skin, _) = Shapes.Skin(Shapes.At(new BoxForm(120, 120, 0), 0, 0, 0), Shapes.At(new RoundForm(80), 0, 0, 100));
        Assert.Equal(4, skin.Panels.Count(p => p.Flat));
        Assert.Equal(4, skin.Panels.Count(p => !p.Flat && !p.FirstMoves));
        Assert.Equal(8, skin.Panels.Length);
    }

    [Fact]
    [Truth(Grade.Property, "all parts of a skin make up the whole, wherever it is opened and whether in one piece or two")]
    public void Seams_lose_nothing()
    {
        Gen.ULong.Sample(seed =>
        {
            var chance = new Chance(seed);
            var asked = Shapes.Asked(Shapes.RandomEnd(chance, 0), Shapes.RandomEnd(chance, 130), 0.02);
            var whole = Shapes.Area(Triangulate.Of(SkinKit.Drawn(asked).Value, SkinKit.Drawn(asked).Value.Panels, 0.02).Value.Strip);
            foreach (var place in Enum.GetValues<SeamPlace>())
                foreach (var pieces in new[] { 1, 2 })
                {
                    var made = Made.Of(asked with { Seam = new(place, 7 * chance.Uniform(), 0, pieces) }).Value;
                    Assert.Equal(pieces, made.Kit.Pieces.Length);
                    Assert.InRange(made.Kit.Pieces.Sum(p => p.Area) / whole, 1 - 5e-4, 1 + 5e-4);
                }
        }, iter: 60);
    }
}
