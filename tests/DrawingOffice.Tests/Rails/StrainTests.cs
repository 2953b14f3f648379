using WitnessMark.DrawingOffice.Rails;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Rails;

public class StrainTests
{
    static readonly BendMethod Method = new NeutralAxis(0.4);

    static StrainSpan Arc(EdgeStrain edge) => edge.Spans.First(s => Math.Abs(s.Edge) > 1e-6);

    [Theory]
    [InlineData(400, -0.3)]
    [InlineData(220, -0.5)]
    [InlineData(400, 0.3)]
    [Truth(Grade.Property, "closed form: a fibre of a swept flange is an arc before and after, about the same middle; strain is the ratio of the two radii less 1")]
    public void A_swept_flange_is_strained_by_the_ratio_of_its_radii(double radius, double turn)
    {
        var rail = Made.Swept(radius, turn);
        var form = RailForm.Of(rail, Method).Value;
        var strains = StrainMap.Of(form);
        var (allowance, rho, flat) = (Math.PI / 2 * (3 + 0.4 * 2), 4.0, 35 - 5.0);
        // Turning right, the middle lies below the lower edge: the lower flange is on the hollow side. Setback 5 mm, web 80.
        var right = turn < 0;
        double Radius(bool upper) => right ? upper ? radius + 80 - 5 : radius + 5 : upper ? radius - 80 + 5 : radius - 5;
        foreach (var (strain, upper) in strains.Zip([false, true]))
        {
            var side = right == upper ? 1 : -1;
            var r = Radius(upper);
            Assert.Equal((r + side * rho) / (r + side * (allowance + flat)) - 1, Arc(strain).Edge, 9);
            Assert.Equal((r + side * rho) / (r + side * (allowance + flat / 2)) - 1, Arc(strain).Middle, 9);
        }
    }

    [Fact]
    [Truth(Grade.Published, "Dudra and Shah 1988 (J. Mater. Shaping Tech. 6, 91-101): the axisymmetric flange has a closed form, here b/(R+b) and b/(r−b) by lengths of the free edge, which bending about a sharp fold leaves")]
    public void With_a_sharp_fold_in_thin_sheet_the_law_is_the_books()
    {
        const double r = 300, b = 30;
        var rail = Made.Swept(r, -0.4, RailKind.L, 0.001, 0.001, web: 50, flange: b);
        // The lower flange lies inside the sweep: its blank edge has the radius r − b.
        var lower = StrainMap.Of(RailForm.Of(rail, Method).Value)[0];
        Assert.Equal(b / (r - b), lower.Stretch, 4);
        Assert.Equal(0, lower.Shrink, 12);
        var up = Made.Swept(r, 0.4, RailKind.L, 0.001, 0.001, web: 50, flange: b);
        Assert.Equal(b / (r + b), StrainMap.Of(RailForm.Of(up, Method).Value)[0].Shrink, 4);
    }

    [Theory]
    [InlineData(500, 0.25)]
    [InlineData(500, -0.25)]
    [Truth(Grade.Property, "closed form: in plan the flange is a part of a ring; its fibre at e from the web's middle layer has radius R − e where the blank is straight")]
    public void A_cranked_flange_is_strained_by_its_distance_over_the_radius(double radius, double turn)
    {
        var strains = StrainMap.Of(RailForm.Of(Made.Cranked(radius, turn), Method).Value);
        // Middle layer: the flange's edge stands rho + flat from the web's.
        var reach = (4.0 + 30) / radius * Math.Sign(turn);
        Assert.Equal(-reach, Arc(strains[0]).Edge, 9);
        Assert.Equal(reach, Arc(strains[1]).Edge, 9);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "length of the formed fibre measured on the shape itself by central differences")]
    public void The_law_agrees_with_lengths_measured_on_the_shape()
    {
        var rail = Made.Swept(350, -0.35, RailKind.TopHat) with { LowerAngle = 1.3, UpperAngle = 1.8, LipAngle = 1.2 };
        rail = rail with { Stations = [.. rail.Stations.Select((s, k) => s with { LowerLip = 20, UpperLip = 18, Plan = k == 2 ? 40 : 0 })] };
        var form = RailForm.Of(rail, Method).Value;
        var seen = 0;
        foreach (var edge in form.Folds)
            foreach (var part in edge.Parts)
                foreach (var flat in new[] { 4.0, 20, edge.DevelopedAt(part.Middle) })
                {
                    var place = edge.Place(part.Middle, part.Step);
                    var (law, blank) = (StrainMap.At(form, edge, part, part.Middle, flat), 1 - place.CurveOut * flat);
                    Assert.InRange(StrainMap.Measured(form, edge, part, part.Middle, flat) / blank - 1 - law, -2e-6, 2e-6);
                    seen++;
                }
        Assert.True(seen >= 18);
    }

    [Fact]
    [Truth(Grade.Property, "a straight taper is folded, not strained")]
    public void A_straight_tapered_rail_is_not_strained()
    {
        var rail = new Rail("taper", RailKind.C, 2, 3, [Made.At(0), Made.At(300), Made.At(700, 50, 25, 30)]);
        foreach (var strain in StrainMap.Of(RailForm.Of(rail, Method).Value)) Assert.Equal((0, 0), (strain.Stretch, strain.Shrink));
    }
}
