using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths.Geometry;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Sheetwork;

[Truth(Grade.CommonPractice, "what can and cannot be folded in a bench folder")]
public class BendOrderTests
{
    const double Right = Math.PI / 2;

    static Face Plate(string id, double w, double h) => new(id, Loop.Rectangle(w, h), []);

    static BendOrder Order(FaceTree tree, Folder folder) => BendOrder.Find(tree, Develop.Blank(tree, new Din6935()).Value, folder);

    static FaceTree Angle(double degrees) => FaceTree.Create("angle", 1, [Plate("base", 100, 80), Plate("flange", 100, 40)],
        [new("base", new(100, 80), new(0, 80), "flange", degrees * Math.PI / 180, 1.5)]).Value;

    [Theory]
    [InlineData(90, true)]
    [InlineData(-90, true)]
    [InlineData(130, true)]
    [InlineData(145, false)]
    public void The_beams_nose_says_how_far_a_flange_folds(double degrees, bool possible)
    {
        var order = Order(Angle(degrees), Folder.Bench);
        Assert.Equal(possible, order.Possible);
        if (possible) Assert.Equal(degrees > 0, Assert.Single(order.Steps).UpperSideUp);
        else Assert.Contains("beam", order.Cautions[0].Words);
    }

    [Fact]
    public void Lips_of_a_channel_are_folded_before_its_webs()
    {
        var order = Order(CheckTests.Channel(lip: 12, web: 30, width: 70), Folder.Bench with { BeamHeight = 40, BeamDepth = 45 });
        Assert.Equal("", string.Join(" ", order.Cautions.Select(c => c.Words)));
        int Place(string bend) => order.Steps.ToList().FindIndex(s => s.Bend == bend);
        Assert.True(Place("left-lipL") < Place("base-left"));
        Assert.True(Place("right-lipR") < Place("base-right"));
    }

    [Fact]
    public void A_deep_narrow_channel_cannot_be_closed_round_the_beam()
    {
        var deep = FaceTree.Create("deep", 1, [Plate("base", 100, 30), Plate("left", 100, 120), Plate("right", 100, 120)],
            [new("base", new(100, 30), new(0, 30), "left", Right, 1.5), new("base", new(0, 0), new(100, 0), "right", Right, 1.5)]).Value;
        var order = Order(deep, Folder.Bench);
        Assert.False(order.Possible);
        Assert.All(order.Cautions, c => Assert.Equal(CautionKind.CannotBend, c.Kind));
        // A shallower one goes by clamping the flange itself.
        var shallow = FaceTree.Create("shallow", 1, [Plate("base", 100, 40), Plate("left", 100, 18), Plate("right", 100, 18)],
            [new("base", new(100, 40), new(0, 40), "left", Right, 1.5), new("base", new(0, 0), new(100, 0), "right", Right, 1.5)]).Value;
        Assert.True(Order(shallow, Folder.Bench).Possible);
    }

    [Fact]
    public void A_tray_needs_fingers()
    {
        var tray = FaceTree.Create("tray", 1, [Plate("base", 100, 80), Plate("a", 100, 25), Plate("b", 80, 25), Plate("c", 100, 25), Plate("d", 80, 25)],
            [
                new("base", new(0, 0), new(100, 0), "a", Right, 1.5), new("base", new(100, 0), new(100, 80), "b", Right, 1.5),
                new("base", new(100, 80), new(0, 80), "c", Right, 1.5), new("base", new(0, 80), new(0, 0), "d", Right, 1.5),
            ]).Value;
        Assert.True(Order(tray, Folder.Bench).Possible);
        Assert.False(Order(tray, Folder.Bench with { Fingers = false }).Possible);
    }

    [Fact]
    public void Every_bend_is_in_the_order_once()
    {
        var tree = CheckTests.Channel(lip: 12, web: 30, width: 70);
        var order = Order(tree, Folder.Bench with { BeamHeight = 40, BeamDepth = 45 });
        Assert.Equal(tree.Bends.Select(b => $"{b.Parent}-{b.Child}").Order(), order.Steps.Select(s => s.Bend).Order());
    }
}
