using WitnessMark.DrawingOffice.Sections;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Sections;

public class SectionTests
{
    static SectionProperties Of(Profile profile) => SectionProperties.Of(profile).Value;

    internal static Profile Sheet(double thickness, Vec2[] middle, double radius = 0, bool closed = false) =>
        new("", [new("a", thickness, Chain.Round(middle, [.. middle.Select(_ => radius)], closed).Value, closed)], []);

    /// <summary>Web upright at x = 0, flanges to the right.</summary>
    static Vec2[] Channel(double flange, double web) => [new(flange, 0), new(0, 0), new(0, web), new(flange, web)];

    [Theory]
    [Truth(Grade.Published, "Property calculation of channel sections to IS 811:1987, 110CS50X10X2 and 90CS50X15X2 (a public calculation sheet, scribd 501312100); linear method, last figure rounded")]
    [InlineData(110, 10, 4.30, 81.66, 13.02)]
    [InlineData(90, 15, 4.10, 53.50, 14.19)]
    public void A_lipped_channel_with_rounded_corners_agrees_with_a_published_sheet(double height, double lip, double area, double ix, double iy)
    {
        // Outside 50 wide, 2 thick, inside radius 3; the sheet's middle line runs 1 mm inside.
        var p = Of(Sheet(2, [new(49, lip), new(49, 1), new(1, 1), new(1, height - 1), new(49, height - 1), new(49, height - lip)], 4));
        Assert.Equal(area, p.Area / 100, 0.005);
        // The sheet takes all metal to lie on the middle line and rounds the place of an arc's centroid.
        Assert.InRange(p.Ix / 1e4 / ix, 0.998, 1.002);
        Assert.InRange(p.Iy / 1e4 / iy, 0.997, 1.003);
    }

    [Theory]
    [Truth(Grade.Published, "Shear centre 3b²/(h + 6b) and warping constant t b³ h² (3b + 2h)/12/(6b + h) of a thin channel: the textbook formulas as restated in public lecture notes")]
    [InlineData(40, 80, 2)]
    [InlineData(25, 100, 1.2)]
    public void A_thin_channels_shear_centre_and_warping(double b, double h, double t)
    {
        var p = Of(Sheet(t, Channel(b, h)));
        Assert.Equal(-3 * b * b / (h + 6 * b), p.ShearCentre!.Value.X, 1e-9);
        Assert.Equal(h / 2, p.ShearCentre.Value.Y, 1e-9);
        Assert.InRange(p.Warping!.Value / (t * b * b * b * h * h / 12 * (3 * b + 2 * h) / (6 * b + h)), 1 - 1e-9, 1 + 1e-9);
        Assert.Equal((2 * b + h) * t * t * t / 3, p.Torsion, 1e-9);
        Assert.Equal((2 * b + h) * t * t / 3, p.TorsionModulus!.Value, 1e-9);
    }

    [Fact]
    [Truth(Grade.Published, "Bredt's formula for a closed thin tube, T = 2 A t tau and J = 4A²/∮ds/t (public lecture notes on closed thin-walled tubes)")]
    public void A_square_tube_twists_by_bredt()
    {
        var p = Of(Sheet(2, [new(0, 0), new(50, 0), new(50, 30), new(0, 30)], closed: true));
        Assert.Equal(4 * 1500.0 * 1500 / (160 / 2.0) + 160 * 8 / 3.0, p.Torsion, 1e-6);
        Assert.Equal(1, p.Cells);
        Assert.Equal(new Vec2(25, 15), p.ShearCentre!.Value with { X = Math.Round(p.ShearCentre.Value.X, 9), Y = Math.Round(p.ShearCentre.Value.Y, 9) });
        // Outside rectangle less inside one.
        Assert.Equal((52 * 32 * 32 * 32 - 48 * 28 * 28 * 28) / 12.0, p.Ix, 1e-6);
    }

    [Fact]
    [Truth(Grade.Property, "A web in the plane of symmetry of a closed tube carries no torsion, so two cells twist as the one they divide")]
    public void A_middle_web_adds_only_its_own_torsion()
    {
        var (outer, web) = (Tube(60, 40, 1.5), new Strip("web", 1.5, Straight(new(30, 0), new(30, 40))));
        var one = Of(new("", [outer], []));
        var two = Of(new("", [outer, web], [new("tube", "web", new(30, 0)), new("tube", "web", new(30, 40))]));
        Assert.Equal(2, two.Cells);
        Assert.Equal(one.Torsion + 40 * 1.5 * 1.5 * 1.5 / 3, two.Torsion, 1e-6);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "Two cells solved by hand from equal twist and torque = ∑ 2 A q, written out here for unequal cells")]
    public void Two_unequal_cells_share_the_torque()
    {
        const double t = 1.5;
        var two = Of(new("", [Tube(60, 40, t), new("web", 3, Straight(new(20, 0), new(20, 40)))],
            [new("tube", "web", new(20, 0)), new("tube", "web", new(20, 40))]));
        // Cell 1: 20 x 40, cell 2: 40 x 40; the web is 3 mm.
        var (a1, a2, d1, d2, d12) = (800.0, 1600.0, (20 + 20 + 40) / t, (40 + 40 + 40) / t, 40 / 3.0);
        // q1 (d1 + d12) − q2 d12 = 2 A1 G θ', −q1 d12 + q2 (d2 + d12) = 2 A2 G θ'.
        var det = (d1 + d12) * (d2 + d12) - d12 * d12;
        var (q1, q2) = ((2 * a1 * (d2 + d12) + 2 * a2 * d12) / det, (2 * a2 * (d1 + d12) + 2 * a1 * d12) / det);
        var fins = 200 * t * t * t / 3 + 40 * 27 / 3.0;
        Assert.Equal(2 * a1 * q1 + 2 * a2 * q2 + fins, two.Torsion, 1e-6);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "area integrals by adding up small squares of a raster")]
    public void Solids_with_arcs_and_holes_agree_with_a_raster()
    {
        var solid = Fillet.Round([new(5, -3), new(65, -3), new(65, 37), new(30, 50), new(5, 37)], [4, 6, 0, 8, 5]).Value;
        var hole = Loop.Circle(new(30, 18), 9);
        var p = Of(new("", [], []) { Solid = solid, Holes = [hole] });
        var (outline, inner) = (solid.Flatten(1e-5), hole.Flatten(1e-5));
        const double step = 0.2;
        double n = 0, x = 0, y = 0, xx = 0, yy = 0, xy = 0;
        for (var u = 5 + step / 2; u < 65; u += step)
            for (var v = -3 + step / 2; v < 50; v += step)
            {
                if (!Plane2.Contains(outline.AsSpan(), new(u, v)) || Plane2.Contains(inner.AsSpan(), new(u, v))) continue;
                (n, x, y, xx, yy, xy) = (n + 1, x + u, y + v, xx + u * u, yy + v * v, xy + u * v);
            }
        Assert.InRange(p.Area / (n * step * step), 1 - 1e-3, 1 + 1e-3);
        Assert.Equal(x / n, p.Centroid.X, 0.02);
        Assert.Equal(y / n, p.Centroid.Y, 0.02);
        Assert.InRange(p.Ix / ((yy - y * y / n) * step * step), 1 - 2e-3, 1 + 2e-3);
        Assert.InRange(p.Iy / ((xx - x * x / n) * step * step), 1 - 2e-3, 1 + 2e-3);
        Assert.Equal((xy - x * y / n) * step * step, p.Ixy, 2e-3 * p.Ix);
    }

    [Fact]
    [Truth(Grade.Published, "Zed section, closed formulas Iy = bf h³/12 − (bf − tw)(h − 2tf)³/12 and Iyz = −bf (h − tf) Af/2 as printed in a public worksheet on zed sections, overlapping corners apart")]
    public void A_zed_with_sharp_corners()
    {
        // Middle line: outside 82 high, flanges 41 from the web's far side; web and flanges 2.
        var p = Of(Sheet(2, [new(-40, 80), new(0, 80), new(0, 0), new(40, 0)]));
        const double h = 82, t = 2, bf = 41;
        Assert.Equal(bf * h * h * h / 12 - (bf - t) * Math.Pow(h - 2 * t, 3) / 12, p.Ix, 1e-6);
        Assert.Equal(-(bf - t) * t * (h - t) * bf / 2, p.Ixy, 1e-6);
        Assert.Equal(p.Ix + p.Iy, p.Principal.Most + p.Principal.Least, 1e-6);
    }

    [Fact]
    [Truth(Grade.Property, "Turning and shifting a section leaves area, principal moments, torsion, warping and the shear centre's place in the metal")]
    public void A_turned_section_is_the_same_section()
    {
        var at = Sheet(1.6, [new(0, 0), new(30, 4), new(36, 50), new(70, 52), new(74, 20)], 5);
        var moved = new Profile("", [at.Strips[0] with { Middle = new([.. at.Strips[0].Middle.Corners.Select(c => c with { At = c.At.Turned(0.7) + new Vec2(500, -900) })]) }], []);
        var (p, q) = (Of(at), Of(moved));
        Assert.Equal(p.Area, q.Area, 1e-8);
        Assert.InRange(q.Principal.Most / p.Principal.Most, 1 - 1e-10, 1 + 1e-10);
        Assert.InRange(q.Principal.Least / p.Principal.Least, 1 - 1e-10, 1 + 1e-10);
        Assert.InRange(q.Warping!.Value / p.Warping!.Value, 1 - 1e-9, 1 + 1e-9);
        Assert.Equal(0, q.ShearCentre!.Value.DistanceTo(p.ShearCentre!.Value.Turned(0.7) + new Vec2(500, -900)), 1e-7);
        var turn = (q.PrincipalTurn - p.PrincipalTurn - 0.7) / Math.PI;
        Assert.Equal(0, turn - Math.Round(turn), 1e-9);
    }

    internal static Strip Tube(double width, double height, double thickness) =>
        new("tube", thickness, Chain.Round([new(0, 0), new(width, 0), new(width, height), new(0, height)], [0, 0, 0, 0], closed: true).Value, Closed: true);

    internal static Chain Straight(Vec2 a, Vec2 b) => new([new(a), new(b)]);

    [Theory]
    [Truth(Grade.Property, "a hole takes metal out of the solid it lies in: none lies across the outline, outside it, or in another hole")]
    [InlineData("[{ 'at': [25, 15], 'diameter': 200 }]", "hole 1: \"from -75 to 125 mm across and -85 to 115 mm up\" is not accepted; a hole must lie wholly inside the solid outline; move it or make it smaller.")]
    [InlineData("[{ 'at': [500, 15], 'diameter': 20 }]", "hole 1: \"from 490 to 510")]
    [InlineData("[{ 'at': [50, 15], 'diameter': 20 }]", "hole 1: \"from 40 to 60")]
    [InlineData("[{ 'at': [25, 15], 'diameter': 30 }]", "hole 1: \"from 10 to 40")]
    [InlineData("[{ 'at': [25, 15], 'diameter': 1e5 }]", "hole 1: ")]
    [InlineData("[{ 'at': [3, 3], 'diameter': 4 }]", "hole 1: \"from 1 to 5")]
    [InlineData("[{ 'at': [25, 15], 'diameter': 20 }, { 'at': [27, 15], 'diameter': 20 }]", "hole 2: \"from 17 to 37 mm across and 5 to 25 mm up\" is not accepted; it runs into hole 1; move them apart or give both as one hole by its corners.")]
    [InlineData("[{ 'at': [25, 15], 'diameter': 20 }, { 'at': [25, 15], 'diameter': 8 }]", "hole 2: ")]
    [InlineData("[{ 'at': [25, 15], 'diameter': 8 }, { 'corners': [[15, 5], [35, 5], [35, 25], [15, 25]] }]", "hole 2: ")]
    [InlineData("[{ 'at': [20, 15], 'diameter': 10 }, { 'at': [30, 15], 'diameter': 10 }]", "hole 2: ")]
    public void A_hole_that_is_not_in_the_solid_or_runs_into_another_is_refused(string holes, string sentence)
    {
        // The lower left corner is cut off from 12 mm along to 12 mm up.
        var json = $$"""{ "solid": [[12, 0], [50, 0], [50, 30], [0, 30], [0, 12]], "holes": {{holes.Replace('\'', '"')}} }""";
        Assert.StartsWith(sentence, SectionProperties.Of(ProfileJson.Read(json).Value.Profile).Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "holes inside and clear of each other take their own area out, whichever way their corners run")]
    public void Holes_in_the_solid_take_their_area_out()
    {
        var profile = ProfileJson.Read("""{ "solid": [[0, 0], [50, 0], [50, 30], [0, 30]], "holes": [{ "at": [15, 15], "diameter": 20 }, { "corners": [[30, 5], [30, 25], [45, 25], [45, 5]] }] }""").Value.Profile;
        Assert.Equal(1500 - Math.PI * 100 - 300, Of(profile).Area, 1e-9);
    }
}
