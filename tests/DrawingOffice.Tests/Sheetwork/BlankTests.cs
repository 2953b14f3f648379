using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths.Geometry;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Sheetwork;

public class BlankTests
{
    static readonly BendMethod Method = new NeutralAxis(0.4);

    static Face Plate(string id, double w, double h) => new(id, Loop.Rectangle(w, h), []);

    static FaceTree Angle(double from, double to, double flange = 20) => FaceTree.Create("angle", 2,
        [Plate("base", 60, 40), Plate("flange", to - from, flange)],
        [new("base", new(to, 40), new(from, 40), "flange", Math.PI / 2, 2)]).Value;

    [Fact]
    public void An_angle_develops_to_its_legs_and_its_strip()
    {
        var blank = Develop.Blank(Angle(0, 60), Method).Value;
        Assert.Equal(4, blank.Outline.Corners.Select(c => (Math.Round(c.At.X, 6), Math.Round(c.At.Y, 6))).Where(p => p.Item2 is 0 or > 60).Count());
        Assert.Equal(40 + 20 + Math.PI / 2 * (2 + 0.4 * 2), blank.Outline.Corners.Max(c => c.At.Y), 1e-12);
        Assert.Empty(blank.Cautions);
    }

    [Fact]
    public void A_bend_that_ends_inside_a_side_gets_a_relief_at_each_end()
    {
        var blank = Develop.Blank(Angle(15, 45), Method).Value;
        Assert.Contains("both ends", Assert.Single(blank.Cautions).Words);
        var relief = Relief.Usual(2);
        Assert.Equal(60 * 40 + 30 * (20 + blank.BendLines[0].Allowance.Length) - 2 * relief.Width * relief.Depth, blank.Outline.SignedArea, 1e-9);
    }

    [Fact]
    public void A_shoulder_too_short_for_a_relief_is_said_not_drawn()
    {
        var blank = Develop.Blank(Angle(1, 60), Method).Value;
        Assert.Contains(blank.Cautions, c => c.Kind == CautionKind.ReliefNotDrawn);
    }

    [Fact]
    public void A_tray_gets_a_round_relief_where_two_bends_meet()
    {
        var tree = FaceTree.Create("tray", 1, [Plate("base", 60, 40), Plate("a", 40, 15), Plate("b", 60, 15)],
            [new("base", new(60, 0), new(60, 40), "a", Math.PI / 2, 1), new("base", new(60, 40), new(0, 40), "b", Math.PI / 2, 1)]).Value;
        var blank = Develop.Blank(tree, Method).Value;
        Assert.Contains(blank.Outline.Corners, c => c.Bulge < -2);
        Assert.InRange(blank.AreaImbalance, -1e-12, 1e-12);
        // Three quarters of a 3 mm hole.
        Assert.Equal(0.75 * Math.PI * 1.5 * 1.5, blank.CornerReliefArea, 1e-9);
    }

    [Fact]
    public void A_blank_that_runs_over_itself_is_told()
    {
        // Two wings on neighbouring sides, each reaching over the corner between them.
        Face[] faces =
        [
            Plate("base", 40, 40),
            new("right", Loop.Of(new(0, 0), new(40, 0), new(40, 90), new(-90, 90), new(-90, 30)), []),
            new("top", Loop.Of(new(0, 0), new(40, 0), new(120, 60), new(120, 90), new(0, 90)), []),
        ];
        var tree = FaceTree.Create("wings", 1, faces,
            [new("base", new(40, 0), new(40, 40), "right", 1, 1), new("base", new(40, 40), new(0, 40), "top", 1, 1)]).Value;
        Assert.Contains(Develop.Blank(tree, Method).Value.Cautions, c => c.Kind == CautionKind.BlankOverlaps);
        Assert.DoesNotContain(Develop.Blank(Angle(0, 60), Method).Value.Cautions, c => c.Kind == CautionKind.BlankOverlaps);
    }

    [Fact]
    [Truth(Grade.Property, "a rigid motion keeps distances: a hole keeps its distances to its own face's corners")]
    public void Holes_move_true()
    {
        var flange = Plate("flange", 60, 20) with { Openings = [new RoundHole("A", new(12, 9), 5)] };
        var tree = FaceTree.Create("angle", 2, [Plate("base", 60, 40), flange], [new("base", new(60, 40), new(0, 40), "flange", 1, 2)]).Value;
        var blank = Develop.Blank(tree, Method).Value;
        var hole = Assert.IsType<RoundHole>(blank.Openings.Single());
        // The flange hangs with its x axis from the bend's end (0, 40) backwards along the bend: x stays x here.
        Assert.Equal(12, hole.At.X, 1e-9);
        Assert.Equal(40 + blank.BendLines[0].Allowance.Length + 9, hole.At.Y, 1e-9);
    }
}
