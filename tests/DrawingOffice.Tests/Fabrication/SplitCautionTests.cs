using System.Globalization;
using WitnessMark.DrawingOffice.Fabrication;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Fabrication;

public class SplitCautionTests
{
    /// <summary>A base of 100 × 60 mm and a wall of 40 mm square to it along x, 1.5 mm thick.</summary>
    static Pressing Angle(JointWish wish, double plusMinus = 0)
    {
        var pressing = Pressings.Of(1.5,
            [("A", new(0, 0, 0)), ("B", new(100, 0, 0)), ("C", new(100, 60, 0)), ("D", new(0, 60, 0)), ("E", new(0, 0, 40)), ("F", new(100, 0, 40))],
            ("base", "A B C D"), ("wall", "A B F E"));
        var std = new Vec3(plusMinus / 2, plusMinus / 2, plusMinus / 2);
        return pressing with { InsideRadius = 2, Wishes = [new("base", "wall", wish)], Points = [.. pressing.Points.Select(p => p with { Std = std })] };
    }

    static Kit KitOf(Pressing pressing)
    {
        var model = FaceModel.Of(pressing).Value;
        return SplitKit.Of(model, Splitter.Find(model, SheetShop.Usual, SplitWork.Usual, new NeutralAxis(0.42)).Value.Choices[0]).Value;
    }

    static bool Says(Kit kit, string words) => kit.Cautions.Any(c => c.Words.Contains(words));

    [Theory]
    [InlineData(JointWish.FoldOnly, false)]
    [InlineData(JointWish.WeldOnly, true)]
    [Truth(Grade.CommonPractice, "edges, folder and load-bearing parts are always told, once; what concerns the arc only when something is welded")]
    public void Every_split_tells_what_hurts(JointWish wish, bool welded)
    {
        var kit = KitOf(Angle(wish));
        Assert.True(Says(kit, "edges that slice"));
        Assert.True(Says(kit, "folder crushes"));
        Assert.Single(kit.Cautions, c => c.Words.Contains("engineer") && c.Words.Contains("local rules"));
        Assert.Equal(welded, Says(kit, "arc burns"));
    }

    [Theory]
    [InlineData(2, true)]
    [InlineData(1000, false)]
    [Truth(Grade.Property, "the steps speak of setting tools when there are some, and name the joint that has none")]
    public void Steps_go_by_the_tools(double radius, bool tool)
    {
        var kit = KitOf(Angle(JointWish.WeldOnly) with { InsideRadius = radius });
        Assert.Equal(tool, kit.Formers.Length > 0);
        Assert.Equal(tool, kit.Steps.Any(s => s.Contains("Make the setting tools")));
        Assert.Equal(!tool, kit.Steps.Any(s => s.Contains("No setting tool holds base-wall")));
    }

    [Theory]
    [InlineData(0.3, false, true)]
    [InlineData(3, true, true)]
    [InlineData(20, true, false)]
    [Truth(Grade.CommonPractice, "an angle known no better than ± 2°, 19 in 20, is not one to set by; past ± 10° no tool is drawn. The ± is that of the listing")]
    public void Points_too_rough_for_the_angle_are_told(double plusMinus, bool rough, bool tool)
    {
        var kit = KitOf(Angle(JointWish.WeldOnly, plusMinus));
        var listed = double.Parse(kit.Listings.Single(l => l.Title == "Setting angles").Rows[0][2].TrimEnd('°'), CultureInfo.InvariantCulture);
        Assert.Equal((rough, tool), (listed > 2, listed <= 10));
        Assert.Equal(rough, Says(kit, "too rough to set this joint: measure A, B"));
        Assert.Equal(tool, kit.Formers.Length > 0);
        Assert.Equal(!tool, Says(kit, "No setting tool is drawn"));
    }

    [Fact]
    [Truth(Grade.CommonPractice, "a fold by points as rough is told too")]
    public void Points_too_rough_for_a_fold_are_told() =>
        Assert.True(Says(KitOf(Angle(JointWish.FoldOnly, 20)), "too rough to fold this joint"));

    [Theory]
    [InlineData(3.3, true)]
    [InlineData(6.2, true)]
    [InlineData(6.3, false)]
    [Truth(Grade.CommonPractice, "rim to edge as cut: 2 thicknesses of 1.5 mm, the edge lying half a thickness inside points on the middle of a right angle, the hole 5 mm across")]
    public void A_hole_by_a_weld_is_told(double y, bool near)
    {
        var pressing = Angle(JointWish.WeldOnly);
        var kit = KitOf(pressing with { Faces = pressing.Faces.SetItem(0, pressing.Faces[0] with { Holes = [new("H", new(50, y, 0), 5)] }) });
        var told = kit.Cautions.Where(c => c.Words.Contains("Opening H on base") && c.Words.Contains("welded edge base-wall")).ToArray();
        Assert.Equal(near, told.Length == 1);
        if (near) Assert.Equal(y - 2.5 - 0.75, told[0].Value, 0.01);
    }

    [Theory]
    [InlineData(110, true)]
    [InlineData(300, false)]
    [Truth(Grade.Property, "a face of 100 × 60 mm is 116.6 mm from corner to corner; a row of spots is no longer")]
    public void A_row_longer_than_its_face_is_refused(double row, bool taken)
    {
        var model = FaceModel.Of(Angle(JointWish.Free) with { Spots = [new("s", "base", "wing", 1.2, 5, row)] });
        Assert.Equal(taken, model.Ok);
        if (!taken) Assert.Contains("spots s, row: \"300 mm\" is not accepted; face base is 116.6 mm", model.Refusal!.Sentence);
    }
}
