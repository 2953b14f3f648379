using WitnessMark.DrawingOffice.Rails;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Rails;

[Truth(Grade.Property, "a hole's place on the blank and in space, worked by hand from the section")]
public class HoleTests
{
    static readonly BendMethod Method = new NeutralAxis(0.4);

    static Rail With(RailFace face, double at, double across, AcrossFrom from = AcrossFrom.Edge, double diameter = 8) =>
        new("holed", RailKind.C, 2, 3, [Made.At(0), Made.At(400)]) { Holes = [new("A", face, at, from, across, new RoundHole("A", Vec2.Zero, diameter))] };

    [Theory]
    [InlineData(RailFace.Web, AcrossFrom.Edge, 30, 30)]
    [InlineData(RailFace.Web, AcrossFrom.FarEdge, 30, 50)]
    [InlineData(RailFace.Web, AcrossFrom.Middle, 4, 44)]
    public void A_hole_on_the_web_lies_at_its_height(RailFace face, AcrossFrom from, double across, double height)
    {
        var hole = (RoundHole)MadeRail.Of(With(face, 150, across, from), Method, 28).Value.Kit.Pieces[0].Openings[0];
        Assert.Equal(new Vec2(150, height).X, hole.At.X, 9);
        Assert.Equal(height, hole.At.Y, 9);
    }

    [Fact]
    public void A_hole_on_a_flange_lies_beyond_the_fold_on_the_blank_and_true_in_space()
    {
        var made = MadeRail.Of(With(RailFace.UpperFlange, 120, 20), Method, 28).Value;
        var hole = (RoundHole)made.Kit.Pieces[0].Openings[0];
        // Web to its tangent line 75, the fold's 5.969 mm of sheet, then 20 less the setback of 5.
        Assert.Equal(75 + Math.PI / 2 * 3.8 + 15, hole.At.Y, 9);
        var at = made.Holes[0].Stands.Origin;
        // The flange's middle layer a half thickness under the top; 20 mm from the web's back, whose middle layer stands at y = 0.
        Assert.Equal((120, -19, 79), (Math.Round(at.X, 9), Math.Round(at.Y, 9), Math.Round(at.Z, 9)));
    }

    [Fact]
    public void A_hole_in_a_worked_flange_is_told_by_how_much_it_would_go_oval()
    {
        var rail = Made.Swept(300, 0.4);
        var middle = rail.Stations[1].At;
        rail = rail with { Holes = [new("A", RailFace.LowerFlange, middle, AcrossFrom.Edge, 25, new RoundHole("A", Vec2.Zero, 10))] };
        var made = Enumerable.Range(1, 4).Select(n => MadeRail.Of(rail, Method, 28, n).Value).First(m => m.Chosen[0].Kind == WayKind.Hammer);
        var caution = Assert.Single(made.Kit.Cautions, c => c.About.Contains("A"));
        Assert.Equal(CautionKind.Shrink, caution.Kind);
        // Formed radius 300 − 5 + 4 inside the flange, on the blank 300 − 5 + 5.969 + 20 from the fold's start.
        Assert.Equal(10 * (1 - (295 + 4) / (295 + 5.969 + 20)), caution.Value, 3);
    }

    [Theory]
    [InlineData(RailFace.Web, 150, 3, "across a bend")]
    [InlineData(RailFace.UpperFlange, 150, 33, "off the upper flange")]
    [InlineData(RailFace.Web, 2, 40, "hole A, at: \"2\"")]
    [InlineData(RailFace.LowerFlange, 398, 20, "over the end of the lower flange")]
    [InlineData(RailFace.Web, 500, 40, "the rail runs from 0 to 400")]
    [InlineData(RailFace.UpperLip, 150, 5, "no such face")]
    public void A_hole_where_none_can_be_is_refused(RailFace face, double at, double across, string words) =>
        Assert.Contains(words, MadeRail.Of(With(face, at, across), Method, 28).Refusal!.Sentence);

    [Fact]
    public void A_hole_near_a_bend_is_told()
    {
        var made = MadeRail.Of(With(RailFace.Web, 150, 12), Method, 28).Value;
        // Edge at 8, inside of the lower flange at 2: 6 mm, less than 2.5 · 2 + 3.
        Assert.Equal(6, Assert.Single(made.Kit.Cautions, c => c.Kind == CautionKind.HoleNearBend).Value, 2);
    }

    [Fact]
    public void Holes_that_run_into_each_other_are_refused()
    {
        var rail = With(RailFace.Web, 150, 40);
        rail = rail with { Holes = rail.Holes.Add(new("B", RailFace.Web, 155, AcrossFrom.Edge, 40, new RoundHole("B", Vec2.Zero, 8))) };
        Assert.Contains("another hole", MadeRail.Of(rail, Method, 28).Refusal!.Sentence);
    }
}
