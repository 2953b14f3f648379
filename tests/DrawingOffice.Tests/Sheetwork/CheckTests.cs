using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths.Geometry;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Sheetwork;

public class CheckTests
{
    const double Right = Math.PI / 2;

    static Face Plate(string id, double w, double h, params Opening[] openings) => new(id, Loop.Rectangle(w, h), [.. openings]);

    static FaceTree Angle(double thickness, double radius, double hole) => FaceTree.Create("angle", thickness,
        [Plate("base", 60, 40, new RoundHole("A", new(30, 40 - hole - 3), 6)), Plate("flange", 60, 20)],
        [new("base", new(60, 40), new(0, 40), "flange", Right, radius)]).Value;

    [Fact]
    [Truth(Grade.CommonPractice, "hole edge at least 2.5 T + R from the inside of the bend")]
    public void A_hole_near_a_bend_is_told_with_its_distance()
    {
        // From the tangent line a 90° bend's inside face stands off by R: the rule leaves 2.5 T of flat.
        var near = Assert.Single(Check.HolesNearBends(Angle(2, 3, hole: 4.9)));
        Assert.Equal(4.9 + 3, near.Value, 0.01);
        Assert.Equal(2.5 * 2 + 3, near.Limit, 1e-12);
        Assert.Empty(Check.HolesNearBends(Angle(2, 3, hole: 5.1)));
    }

    [Theory]
    [Truth(Grade.FromMemory, "Kalpakjian: T(50/r - 1); Datsko and Yang: T(100 - r)²/(200 r - r²)")]
    [InlineData(10, 4.0)]
    [InlineData(20, 1.778)]
    [InlineData(50, 1.0 / 3)]
    public void Least_radius_from_reduction_of_area(double r, double ofThickness) =>
        Assert.Equal(r <= 20 ? Math.Max(50 / r - 1, 0) : ofThickness, MinimumRadius.FromReductionOfArea(r, 1), 0.001);

    [Fact]
    [Truth(Grade.Property, "bending about mid-thickness strains the outer skin by T/(2R + T)")]
    public void At_the_least_radius_the_outer_skin_is_stretched_by_the_elongation()
    {
        foreach (var e in new[] { 5.0, 12, 28, 40 })
        {
            var r = MinimumRadius.FromElongation(e, 1.5);
            Assert.Equal(e / 100, 1.5 / (2 * r + 1.5), 1e-12);
        }
    }

    [Fact]
    public void A_sharp_bend_is_told_only_where_the_metal_is_known()
    {
        var tree = Angle(2, 1, 10);
        Assert.Single(Check.SharpRadii(tree, new(null, 28)));
        Assert.Single(Check.SharpRadii(tree, new(25, null)));
        Assert.Empty(Check.SharpRadii(tree, new(60, null)));
        Assert.Empty(Check.SharpRadii(tree, new(null, null)));
    }

    [Fact]
    public void A_flange_too_short_for_the_blade_is_told_with_its_outside_length()
    {
        var tree = FaceTree.Create("lip", 1, [Plate("base", 60, 40), Plate("lip", 60, 5)], [new("base", new(60, 40), new(0, 40), "lip", Right, 1)]).Value;
        var told = Assert.Single(Check.MachineLimits(tree, Folder.Bench));
        Assert.Equal(CautionKind.ShortFlange, told.Kind);
        Assert.Equal(5 + 2, told.Value, 1e-9);
        // Tapered ends alone do not make a flange short.
        var tapered = new Face("lip", Loop.Of(new(0, 0), new(60, 0), new(48, 20), new(12, 20)), []);
        Assert.Empty(Check.MachineLimits(FaceTree.Create("lip", 1, [Plate("base", 60, 40), tapered], [new("base", new(60, 40), new(0, 40), "lip", Right, 1)]).Value, Folder.Bench));
    }

    [Fact]
    public void Too_long_and_too_thick_are_told()
    {
        var tree = FaceTree.Create("big", 3, [Plate("base", 900, 400), Plate("flange", 900, 50)], [new("base", new(900, 400), new(0, 400), "flange", Right, 3)]).Value;
        Assert.Equal([CautionKind.TooThick, CautionKind.TooWide], Check.MachineLimits(tree, Folder.Bench).Select(c => c.Kind));
    }

    [Fact]
    [Truth(Grade.Property, "two returns of a channel meet exactly when together they are longer than the opening between them")]
    public void Returns_that_run_into_each_other_are_told()
    {
        Assert.Empty(Collisions(18));
        Assert.Single(Collisions(25));
    }

    // A lipped channel, 40 mm between tangent lines: base, two webs of 30, two lips turned in.
    static IEnumerable<Caution> Collisions(double lip) => Check.All(Channel(lip, 30), Develop.Blank(Channel(lip, 30), new Din6935()).Value)
        .Where(c => c.Kind == CautionKind.PartsCollide);

    internal static FaceTree Channel(double lip, double web, double width = 40) => FaceTree.Create("channel", 1,
        [Plate("base", 100, width), Plate("left", 100, web), Plate("right", 100, web), Plate("lipL", 100, lip), Plate("lipR", 100, lip)],
        [
            new("base", new(100, width), new(0, width), "left", Right, 1.5), new("base", new(0, 0), new(100, 0), "right", Right, 1.5),
            new("left", new(100, web), new(0, web), "lipL", Right, 1.5), new("right", new(100, web), new(0, web), "lipR", Right, 1.5),
        ]).Value;
}
