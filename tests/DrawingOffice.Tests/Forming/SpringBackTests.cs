using WitnessMark.DrawingOffice.Forming;
using WitnessMark.Maths;
using WitnessMark.Tests;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Tests.Forming;

public class SpringBackTests
{
    [Theory]
    [Truth(Grade.SecondImplementation, "an elastic, then perfectly plastic strip bent and let go, its moment added up over 20 000 layers")]
    [InlineData(50, 2, 300, 210000)]
    [InlineData(20, 1, 240, 226000)]
    [InlineData(120, 1.2, 260, 70000)]
    [InlineData(5, 1.5, 1200, 207000)]
    public void The_relation_is_what_a_strip_of_layers_does(double radius, double thickness, double yield, double modulus)
    {
        const int layers = 20000;
        var moment = 0.0;
        for (var i = 0; i < layers; i++)
        {
            var y = thickness * ((i + 0.5) / layers - 0.5);
            moment += Math.Clamp(modulus * y / radius, -yield, yield) * y * thickness / layers;
        }
        // Let go, the strip loses the curvature that an elastic strip would have under the same moment.
        var left = 1 / radius - moment / (modulus * thickness * thickness * thickness / 12);
        Assert.InRange(SpringBack.FinalRadius(radius, thickness, yield, modulus).Value * left, 1 - 1e-6, 1 + 1e-6);
    }

    [Fact]
    [Truth(Grade.Published, "Ri/Rf = 4X³ − 3X + 1 with X = Ri Y/(E T), the textbook relation as restated in public lecture notes; values by that cubic")]
    public void The_cubic_itself()
    {
        foreach (var x in new[] { 0, 0.01, 0.1, 0.25, 0.4, 0.499 })
        {
            Assert.Equal(4 * x * x * x - 3 * x + 1, SpringBack.Kept(x), 1e-14);
            Assert.Equal(x, SpringBack.Measure(SpringBack.Kept(x)), 1e-9);
        }
    }

    [Fact]
    [Truth(Grade.FromMemory, "a manufacturing textbook's example: 20 gauge (0.0359 in) steel bent to 0.5 in, Y 40 000 psi, E 29 000 000 psi, springs to 0.531 in")]
    public void The_textbooks_example() =>
        Assert.Equal(0.531, SpringBack.FinalRadius(0.5, 0.0359, 40_000, 29e6).Value, 5e-4);

    [Fact]
    [Truth(Grade.Property, "the former that is asked for leaves the radius that was wanted")]
    public void Both_ways_agree()
    {
        var chance = new Chance(20261126);
        for (var i = 0; i < 2000; i++)
        {
            var (radius, thickness, yield) = (Math.Exp(chance.Uniform(-1, 8)), chance.Uniform(0.3, 6), chance.Uniform(20, 1500));
            var former = SpringBack.FormerRadius(radius, thickness, yield, 210000).Value;
            Assert.InRange(former, 0, radius);
            // Near X = 0.5 next to nothing stays bent, and the last digit of the former counts thousandfold.
            var kept = SpringBack.Kept(former * yield / (210000 * thickness));
            Assert.InRange(SpringBack.FinalRadius(former, thickness, yield, 210000).Value / radius, 1 - 1e-12 / kept / kept, 1 + 1e-12 / kept / kept);
        }
    }

    [Fact]
    [Truth(Grade.Property, "at X = 0.5 the strip is elastic throughout and springs flat")]
    public void A_radius_that_only_springs_is_refused()
    {
        // 0.5 · 210000 · 1 / 210 = 500 mm.
        Assert.True(SpringBack.FinalRadius(499, 1, 210, 210000).Ok);
        Assert.Equal("set radius: \"500 mm\" is not accepted; the sheet springs flat again from 500 mm on; bend it sharper.", SpringBack.FinalRadius(500, 1, 210, 210000).Refusal!.Sentence);
        Assert.StartsWith("thickness: \"0\"", SpringBack.FormerRadius(5, 0, 210, 210000).Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "arc at mid-thickness keeps its length; a higher yield springs further")]
    public void Overbend_holds_the_arc_and_brackets_the_yield()
    {
        var over = Overbend.Of(new(20, Math.PI / 2, 1, 200), Materials.Find("DC01")!).Value;
        Assert.Equal(Math.PI / 2 * 20.5, over.Angle.Value * (over.Radius.Value + 0.5), 1e-12);
        Assert.True(over.Radius.Low < over.Radius.Value && over.Radius.Value < over.Radius.High);
        Assert.True(over.Angle.Low < over.Angle.Value && over.Angle.Value < over.Angle.High);
        Assert.True(over.PlaneStrain);
        Assert.Equal(20, SpringBack.FinalRadius(over.Radius.Low, 1, 280, 206000 / (1 - 0.09)).Value, 1e-9);
        Assert.Equal(20, SpringBack.FinalRadius(over.Radius.High, 1, 180, 206000 / (1 - 0.09)).Value, 1e-9);
        Assert.False(Overbend.Of(new(20, Math.PI / 2, 4, 20), Materials.Find("DC01")!).Value.PlaneStrain);
    }

    [Fact]
    [Truth(Grade.Property, "a trial bend of a sheet of known yield tells that yield again, and then agrees with the relation at other radii")]
    public void A_trial_bend_tells_the_sheets_own_yield()
    {
        const double t = 1.2, y = 231, e = 226000;
        var final = SpringBack.FinalRadius(12, t, y, e).Value;
        var trial = TrialBend.Of(12, 1.6, SpringBack.FinalAngle(1.6, 12, final, t), t).Value;
        Assert.Equal(y / e, trial.Yields, 1e-12);
        Assert.Equal(SpringBack.FormerRadius(40, t, y, e).Value, trial.FormerRadius(40).Value, 1e-8);
        Assert.False(TrialBend.Of(12, 1.6, 1.7, t).Ok);
    }

    [Theory]
    [Truth(Grade.Property, "at 180° the sheet lies flat on itself: a bend that must be set beyond is said once, with the angle that is to be set")]
    [InlineData(5000, 90, "no tool does it in one bend")]
    [InlineData(20, 175, "no tool does it in one bend")]
    [InlineData(20, 169, "a hard sheet of this grade past the 180°")]
    [InlineData(20, 90, null)]
    public void Past_flat_is_one_verdict(double radius, double degrees, string? words)
    {
        var over = Overbend.Of(new(radius, degrees * Math.PI / 180, 1, 100), Materials.Find("DC01")!).Value;
        var said = over.Cautions.Where(c => c.Words.Contains("180°")).ToArray();
        Assert.Equal(words is null ? 0 : 1, said.Length);
        if (words is null) return;
        Assert.Contains(words, said[0].Words);
        Assert.Contains($"be bent to {over.Angle.Value * 180 / Math.PI:0.0}°", said[0].Words);
    }

    [Fact]
    [Truth(Grade.Property, "materials that break before they yield, angles beyond a fold and sharp bends are refused or cautioned in words")]
    public void What_the_relation_cannot_say_is_said()
    {
        Assert.Contains("yields before it breaks", Overbend.Of(new(20, 1, 1, 200), Materials.Find("Grey")!).Refusal!.Sentence);
        Assert.Contains("over 0 to 180°", Overbend.Of(new(20, 4, 1, 200), Materials.Find("DC01")!).Refusal!.Sentence);
        Assert.Contains(Overbend.Of(new(1, 1, 1, 200), Materials.Find("DC01")!).Value.Cautions, c => c.Words.Contains("sharp"));
        Assert.Contains(Overbend.Of(new(10, 1, 1, 200), Materials.Find("DC04")!).Value.Cautions, c => c.Words.Contains("only the highest yield of 240 MPa"));
    }
}
