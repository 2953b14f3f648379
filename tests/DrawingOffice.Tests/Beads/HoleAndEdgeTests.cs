using WitnessMark.DrawingOffice.Beads;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Beads;

public class HoleAndEdgeTests
{
    static HoleTooling Hole(double inside, double height, double radius, double thickness) =>
        HoleTooling.Of(new("A", default, inside, height, radius), thickness).Value;

    [Theory]
    [Truth(Grade.FromMemory, "press-tool handbooks: hole = D − 2 (H − 0.43 R − 0.72 T), D at mid-thickness")]
    [InlineData(60, 8, 3, 1)]
    [InlineData(30, 6, 2, 1.5)]
    [InlineData(100, 15, 5, 0.9)]
    public void By_length_it_is_the_handbooks_hole(double inside, double height, double radius, double t) =>
        // 0.43 stands for 2 − π/2 = 0.4292 and 0.72 for 1.5 − π/4 = 0.7146.
        Assert.Equal(inside + t - 2 * (height - 0.43 * radius - 0.72 * t), Hole(inside, height, radius, t).ByLength, 0.01 * (radius + 1.1 * t));

    [Fact]
    [Truth(Grade.Published, "P. Ulintz, Hole Extrusions part 1 (Metal Forming Magazine, October 2011): a wall 8.2 mm inside, 1.5 mm thick and 3 mm high holds 137.131 mm³")]
    public void The_flanges_own_metal_agrees_with_a_published_example()
    {
        // What a flange 3 mm higher holds more is his wall.
        var (high, low) = (HoleTooling.Volume(new("A", default, 8.2, 5, 1), 1.5), HoleTooling.Volume(new("A", default, 8.2, 2.5, 1), 1.5));
        Assert.Equal(137.131, (high - low) * 3 / 2.5, 0.001);
    }

    [Fact]
    [Truth(Grade.Property, "what is cut out of the plane equals what stands in bend and flange")]
    public void Volume_is_kept()
    {
        var hole = Hole(60, 8, 3, 1);
        var edge = 60 / 2.0 + 1 + 3;
        Assert.Equal(HoleTooling.Volume(hole.Wanted, 1), Math.PI * (edge * edge - hole.ByVolume * hole.ByVolume / 4), 1e-9);
        // A stretched flange that kept its thickness needs more metal, so a smaller hole.
        Assert.True(hole.ByVolume < hole.ByLength);
        Assert.Equal(61 / hole.ByLength - 1, hole.Stretch, 1e-12);
    }

    [Theory]
    [Truth(Grade.Published, "US Navy training course Steelworker vol. 2, edges: wire of 1/8 in allows 5/16 in; single hem its width, double hem twice")]
    [InlineData(3.175, 7.9375)]
    public void Shop_rules(double wire, double allowance)
    {
        Assert.Equal(allowance, EdgeAllowances.Wired(wire, 0.5).Value.Shop, 1e-12);
        Assert.Equal(8, EdgeAllowances.Hemmed(8, 0, 0.8).Value.Shop, 12);
        Assert.Equal(16, EdgeAllowances.Hemmed(8, 0, 0.8, 2).Value.Shop, 12);
    }

    [Theory]
    [Truth(Grade.CommonPractice, "2½ wire diameters for the thin sheets it was made for, to about a thickness")]
    [InlineData(3.2, 0.5)]
    [InlineData(4, 0.8)]
    [InlineData(5, 1)]
    public void The_exact_wire_allowance_is_near_the_shop_rule(double wire, double t)
    {
        var edge = EdgeAllowances.Wired(wire, t).Value;
        Assert.InRange(edge.Exact - edge.Shop, -t, t);
    }

    [Fact]
    [Truth(Grade.Property, "round a wire thick against the sheet the roll is three quarters of a turn and more; a flat hem saves 2T − πT/2 = 0.43 T of its width")]
    public void Exact_allowances()
    {
        // Sheet next to nothing: the whole way round less the radius.
        Assert.Equal(2 * Math.PI * 5 - 5, EdgeAllowances.Wired(10, 1e-12).Value.Exact, 1e-4);
        Assert.Equal(8 - 2 * 0.8 + Math.PI * 0.4, EdgeAllowances.Hemmed(8, 0, 0.8).Value.Exact, 1e-12);
    }

    [Fact]
    [Truth(Grade.Property, "bad input is one sentence that names the field")]
    public void What_cannot_be_is_refused()
    {
        Assert.Equal("flanged hole A, height: \"3 mm\" is not accepted; thickness and radius alone take 4 mm.", HoleTooling.Of(new("A", default, 60, 3, 3), 1).Refusal!.Sentence);
        Assert.StartsWith("flanged hole A, height: \"20 mm\" is not accepted; no hole is left", HoleTooling.Of(new("A", default, 20, 20, 2), 1).Refusal!.Sentence);
        Assert.Contains("cannot be rolled in", EdgeAllowances.Wired(0.5, 1).Refusal!.Sentence);
        Assert.Contains("the fold alone takes 1 mm", EdgeAllowances.Hemmed(0.5, 0, 1).Refusal!.Sentence);
        Assert.Contains("once or twice", EdgeAllowances.Hemmed(8, 0, 1, 3).Refusal!.Sentence);
    }
}
