using WitnessMark.DrawingOffice.Sections;
using WitnessMark.Maths;
using WitnessMark.Tests;
using WitnessMark.Trade;

namespace WitnessMark.DrawingOffice.Tests.Sections;

public class JoinTests
{
    static readonly Material Mild = Materials.Find("DC01")!;

    /// <summary>A top hat of 1.5 mm, 60 by 40, flanges 15, closed by a 1.5 mm plate beneath; plugs in both flanges.</summary>
    internal static Profile Rail(double? pitch = null)
    {
        Vec2[] hat = [new(-45, 0), new(-30, 0), new(-30, 40), new(30, 40), new(30, 0), new(45, 0)];
        return new("rail", [new("hat", 1.5, Chain.Round(hat, [0, 3, 3, 3, 3, 0]).Value), new("plate", 1.5, SectionTests.Straight(new(-45, -1.5), new(45, -1.5)))],
            [new("hat", "plate", new(-38, 0), 8, pitch), new("hat", "plate", new(38, 0), 8, pitch)]);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "q = V Q/I with the plate's first moment by hand; symmetry halves it between two joins")]
    public void Flow_through_two_joins_is_half_of_vq_over_i_each()
    {
        var needs = JoinNeeds.Of(Rail(), Mild, new(1000, 0, 0)).Value;
        var p = SectionProperties.Of(Rail()).Value;
        // The thin-walled second moment leaves out the walls' own t³/12: 2e-3 here.
        var q = 1000 * 90 * 1.5 * (p.Centroid.Y + 1.5) / p.Ix / 2;
        Assert.All(needs, n => Assert.InRange(n.Flow / q, 1 - 2e-3, 1 + 2e-3));
    }

    [Fact]
    [Truth(Grade.Published, "Bredt: the flow round a closed cell is T/(2A) (public lecture notes on closed thin-walled tubes)")]
    public void A_torque_passes_through_the_joins_as_bredt_says()
    {
        var needs = JoinNeeds.Of(Rail(), Mild, new(0, 0, 1e6)).Value;
        // Cell 60 x 40 and the gap of 1.5 mm between middles over 76 mm; what two corners lose by their radius the other two gain.
        var cell = 60 * 40 + 76 * 1.5;
        Assert.All(needs, n => Assert.InRange(n.Flow / (1e6 / (2 * cell)), 0.998, 1.002));
    }

    [Fact]
    [Truth(Grade.Property, "Without its seams a closed rail is an open hat and a loose plate: the torsion constant falls to ∑ s t³/3")]
    public void A_join_left_out_opens_the_cell()
    {
        var closed = SectionProperties.Of(Rail()).Value;
        var open = SectionProperties.Of(Rail() with { Joins = [Rail().Joins[0]] }).Value;
        Assert.Equal((1, 0), (closed.Cells, open.Cells));
        Assert.Equal(closed.Area, open.Area, 9);
        Assert.Equal(open.Area * 1.5 * 1.5 / 3, open.Torsion, 1e-6);
        Assert.True(closed.Torsion > 300 * open.Torsion);
    }

    [Fact]
    [Truth(Grade.FromMemory, "sheet steel practice for arc spots: 2.2 t (d − t) Fu tears round the plug, 0.6 Fu on the area shears it")]
    public void A_plug_bears_the_lesser_of_shear_and_tearing()
    {
        Assert.Equal(2.2 * 1.5 * 6.5 * 270 / 2.5, PlugSeam.Bears(8, 1.5, Mild), 1e-9);
        Assert.Equal(0.6 * 270 * Math.PI * 36 / 4 / 2.5, PlugSeam.Bears(6, 3, Mild), 1e-9);
    }

    [Fact]
    [Truth(Grade.Property, "the pitch that is needed carries exactly the flow")]
    public void Pitch_times_flow_is_one_plug()
    {
        var need = JoinNeeds.Of(Rail(), Mild, new(5000, 0, 0)).Value[0];
        Assert.Equal(need.Plug!.Value, need.Pitch!.Value * need.Flow, 1e-9);
        Assert.False(need.Carries);
        Assert.True(JoinNeeds.Of(Rail(need.Pitch * 0.99), Mild, new(5000, 0, 0)).Value[0].Carries);
        Assert.False(JoinNeeds.Of(Rail(need.Pitch * 1.01), Mild, new(5000, 0, 0)).Value[0].Carries);
    }

    [Theory]
    [Truth(Grade.Property, "bad input is one sentence that names the place")]
    [InlineData("lid", "hat", 0, "join 1: \"lid\" is not accepted; name two of the strips hat, plate.")]
    [InlineData("hat", "hat", 0, "join 1: \"hat\" is not accepted; name two different strips.")]
    [InlineData("hat", "plate", 20, "join 1: \"hat and plate 10.76 mm apart there\" is not accepted; name a place where their middles come within 2.5 mm, so that the sheets touch.")]
    public void Joins_that_cannot_be_are_refused(string first, string second, double x, string sentence) =>
        Assert.Equal(sentence, SectionProperties.Of(Rail() with { Joins = [new(first, second, new(x, -1.5))] }).Refusal!.Sentence);

    [Theory]
    [Truth(Grade.Property, "a plug weld fills a hole in flat sheet that lies on flat sheet: its hole is no wider than the two lie on each other")]
    [InlineData(0, 50, 50, true)]
    [InlineData(0, 50, 51, false)]
    [InlineData(20, 50, 30, true)]
    [InlineData(20, 90, 31, false)]
    public void A_plug_wider_than_the_overlap_is_refused(double from, double to, double plug, bool fits)
    {
        // The upper strip may be drawn either way and with a point on its straight run.
        foreach (var line in new Vec2[][] { [new(from, 2), new(to, 2)], [new(to, 2), new(40, 2), new(from, 2)] })
        {
            var profile = new Profile("", [new("a", 2, SectionTests.Straight(new(0, 0), new(50, 0))), new("b", 2, Chain.Round(line, [.. line.Select(_ => 0.0)]).Value)], [new("a", "b", new(25, 1), plug)]);
            var said = SectionProperties.Of(profile).Refusal?.Sentence;
            Assert.Equal(fits ? null : $"join 1, plug_hole: \"{plug} mm\" is not accepted; a and b have only {plug - 1} mm of flat on each other there; give a smaller hole, or weld the seam through.", said);
        }
    }

    [Fact]
    [Truth(Grade.Property, "a flange ends where its bend begins: 15 mm less the 3 mm of bend leave a plug 12 mm")]
    public void A_bend_ends_the_flat_that_a_plug_sits_in()
    {
        Assert.True(SectionProperties.Of(Rail() with { Joins = [Rail().Joins[0] with { Plug = 12 }] }).Ok);
        Assert.Contains("only 12 mm of flat", SectionProperties.Of(Rail() with { Joins = [Rail().Joins[0] with { Plug = 13 }] }).Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "bad input is one sentence that names the place")]
    public void A_strip_that_hangs_free_and_one_that_crosses_itself_are_refused()
    {
        Assert.StartsWith("joins: ", SectionProperties.Of(Rail() with { Joins = [] }).Refusal!.Sentence);
        Assert.Contains("plate hangs free", SectionProperties.Of(Rail() with { Joins = [] }).Refusal!.Sentence);
        Assert.Contains("it meets itself", SectionProperties.Of(SectionTests.Sheet(1, [new(0, 0), new(50, 0), new(50, 30), new(20, -20)])).Refusal!.Sentence);
        Assert.StartsWith("join 1, plug_hole: \"1.5 mm\"", SectionProperties.Of(Rail() with { Joins = [Rail().Joins[0] with { Plug = 1.5 }] }).Refusal!.Sentence);
        Assert.Contains("join 1 holds them", SectionProperties.Of(Rail() with { Joins = [Rail().Joins[0], Rail().Joins[0]] }).Refusal!.Sentence);
    }
}
