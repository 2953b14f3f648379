using WitnessMark.DrawingOffice.Transitions;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Transitions;

public class ConeTests
{
    const double Inch = 25.4;

    [Fact]
    [Truth(Grade.Published, "ceemrr.com, Geometry 2, The Net of a Frustum: duct 5 to 8 in over 4 in; radii 7.12 and 11.39 in, angle 126.4°")]
    public void The_duct_of_the_geometry_course()
    {
        var cone = new Cone(4 * Inch, 2.5 * Inch, 4 * Inch, Vec2.Zero);
        Assert.Equal(11.39, cone.Reach(0) / Inch, 2);
        Assert.Equal(7.12, cone.Reach(0) * cone.Top / cone.Base / Inch, 2);
        Assert.Equal(126.4, cone.Opening(0, Math.Tau) * 180 / Math.PI, 1);
    }

    [Theory]
    [Truth(Grade.Published, "anvilfire.com, Cones: a 90° point opens to 254.6°; kekkei.com, drawing paper 2079: r 30, h 80 opens to 126.4° at slant 85.44")]
    [InlineData(50, 50, 254.6, 70.71)]
    [InlineData(30, 80, 126.4, 85.44)]
    public void A_pointed_cone_opens_as_published(double radius, double height, double degrees, double slant)
    {
        var cone = new Cone(radius, 0, height, Vec2.Zero);
        Assert.Equal(degrees, cone.Opening(0, Math.Tau) * 180 / Math.PI, 1);
        Assert.Equal(slant, cone.Reach(1), 2);
    }

    [Fact]
    [Truth(Grade.Property, "area of a frustum π (R + r) s; the blank has it, with true arcs, in one piece or two")]
    public void The_blank_of_a_frustum_has_its_area()
    {
        foreach (var (low, high) in new[] { (120.0, 70.0), (40.0, 110.0), (120.0, 0.0) })
            foreach (var pieces in new[] { 1, 2 })
            {
                var made = Made.Of(new AskedCone("cone", 1, low, high, 90, Vec2.Zero) { Sizes = Surface.Mean, Seam = new(SeamPlace.Angle, 1, 0, pieces) }).Value;
                var slant = Math.Sqrt(90 * 90 + (low - high) * (low - high) / 4);
                Assert.Equal(Math.PI * (low + high) / 2 * slant, made.Kit.Pieces.Sum(p => p.Area), 6);
            }
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "a leaning cone's angle and area by plain summation of 2 000 000 thin triangles, Heron's formula and the cosine rule")]
    public void A_leaning_cone_agrees_with_thin_triangles()
    {
        var cone = new Cone(60, 35, 90, new(40, 10));
        const int n = 2_000_000;
        var (angle, area) = (0.0, 0.0);
        var before = cone.OnBase(0);
        for (var k = 1; k <= n; k++)
        {
            var next = cone.OnBase(Math.Tau * k / n);
            var (a, b, c) = (cone.Point.DistanceTo(before), cone.Point.DistanceTo(next), before.DistanceTo(next));
            // 2 atan of the half-angle formula keeps the digits of a thin triangle.
            var s = Math.Sqrt((c - (a - b)) * (c + (a - b)) / ((a + b - c) * (a + b + c)));
            angle += 2 * Math.Atan(s);
            area += a * b * Math.Sin(2 * Math.Atan(s)) / 2;
            before = next;
        }
        Assert.InRange(cone.Opening(0, Math.Tau) / angle, 1 - 1e-9, 1 + 1e-9);
        Assert.InRange(cone.Area / (area * (1 - 35.0 * 35 / 3600)), 1 - 1e-9, 1 + 1e-9);
    }

    [Fact]
    [Truth(Grade.Property, "points of a blank keep their distances along elements and round the rims of the shape")]
    public void A_leaning_blank_keeps_elements_and_rims()
    {
        var cone = new Cone(60, 35, 90, new(40, 0));
        var laid = ConeLay.Of("blank", cone, 0.4, Math.Tau, 0.0005);
        var n = laid.Elements.Length - 1;
        for (var k = 0; k <= n; k++)
        {
            var t = 0.4 + Math.Tau * k / n;
            Assert.Equal(cone.OnBase(t).DistanceTo(cone.OnTop(t)), laid.Elements[k].Length, 9);
        }
        var rim = Enumerable.Range(1, n).Sum(k => laid.Elements[k].First.DistanceTo(laid.Elements[k - 1].First));
        Assert.InRange(rim / (Math.Tau * 60), 1 - 2e-5, 1);
    }

    [Fact]
    [Truth(Grade.Property, "an edge cut square to the wall: its inside corner keeps the inside diameter that was asked")]
    public void Inside_sizes_hold_at_the_inside_edge()
    {
        var asked = new AskedCone("funnel", 3, 160, 40, 120, Vec2.Zero);
        var cone = ConeKit.Cone(asked)!;
        var lean = Math.Atan2(60, 120);
        Assert.Equal(80, cone.Base - 1.5 * Math.Cos(lean), 9);
        Assert.Equal(20, cone.Top - 1.5 * Math.Cos(lean), 9);
    }

    [Fact]
    [Truth(Grade.Property, "a lap adds its own strip and nothing else; a nearly straight cone is a tube")]
    public void A_lap_and_a_tube()
    {
        var plain = Made.Of(new AskedCone("cone", 1, 100, 60, 80, Vec2.Zero)).Value.Kit.Pieces[0];
        var lapped = Made.Of(new AskedCone("cone", 1, 100, 60, 80, Vec2.Zero) { Seam = new(SeamPlace.Flat, 0, 10) }).Value.Kit.Pieces[0];
        Assert.InRange(lapped.Area - plain.Area, 10 * Math.Sqrt(80 * 80 + 20 * 20) - 101, 10 * Math.Sqrt(80 * 80 + 20 * 20));
        var tube = Made.Of(new AskedCone("tube", 1, 100, 100, 80, Vec2.Zero) { Sizes = Surface.Mean, Error = 0.001 }).Value.Kit.Pieces[0];
        Assert.InRange(tube.Area / (Math.PI * 100 * 80), 1 - 1e-5, 1);
    }
}
