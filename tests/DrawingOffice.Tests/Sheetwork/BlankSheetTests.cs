using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom;

namespace WitnessMark.DrawingOffice.Tests.Sheetwork;

public class BlankSheetTests
{
    static Sheet Drawn(Corner[] top, double width = 60)
    {
        var flange = new Face("flange", new([new(new(0, 0)), new(new(width, 0)), .. top]), [new RoundHole("A", new(width - 5, 12), 5), new Slot("S", new(7, 12), 4, 9, 0.2)]);
        var tree = FaceTree.Create("angle", 1.5, [new("base", Loop.Rectangle(width, 40), []), flange],
            [new("base", new(width, 40), new(0, 40), "flange", -Math.PI / 2, 2)]).Value;
        return Develop.Blank(tree, new Din6935()).Value.ToSheet();
    }

    [Fact]
    public void Outline_openings_bends_and_letters_stand_on_their_own_layers()
    {
        var sheet = Drawn([new(new(60, 25)), new(new(0, 25))]);
        var outline = Assert.IsType<PathMark>(Assert.Single(sheet.Marks, m => m.Layer == Layers.Outline));
        Assert.True(outline.Closed);
        Assert.Equal(5, sheet.Marks.Count(m => m.Layer == Layers.Holes));
        Assert.Equal(2.5, sheet.Marks.OfType<CircleMark>().Single().Radius);
        Assert.Single(sheet.Marks, m => m is LineMark { Layer: Layers.Bends, Stroke: Stroke.Fold });
        Assert.Equal("1: 90° DOWN R2", sheet.Marks.OfType<TextMark>().Single().Text);
        Assert.All(outline.Points, p => Assert.True(p.X >= 10 - 1e-9 && p.Y >= 10 - 1e-9 && p.X <= sheet.Width - 10 + 1e-9 && p.Y <= sheet.Height - 10 + 1e-9));
    }

    [Fact]
    public void Arcs_of_the_outline_stay_arcs_and_close_with_the_lines()
    {
        var sheet = Drawn([new(new(60, 15), Math.Tan(Math.PI / 8)), new(new(50, 25)), new(new(0, 25))]);
        var pieces = sheet.Marks.Where(m => m.Layer == Layers.Outline).ToList();
        Assert.Equal(10, Assert.Single(pieces.OfType<ArcMark>()).Radius, 1e-9);
        Vec2 Start(Mark m) => m is ArcMark a ? a.Centre + Vec2.Polar(a.Start, a.Radius) : ((LineMark)m).A;
        Vec2 End(Mark m) => m is ArcMark a ? a.Centre + Vec2.Polar(a.Start + a.Sweep, a.Radius) : ((LineMark)m).B;
        for (var i = 0; i < pieces.Count; i++) Assert.InRange(End(pieces[i]).DistanceTo(Start(pieces[(i + 1) % pieces.Count])), 0, 1e-9);
    }

    [Fact]
    public void A_bend_too_short_for_its_letters_keeps_its_number() =>
        Assert.Equal("1", Drawn([new(new(22, 25)), new(new(0, 25))], 22).Marks.OfType<TextMark>().Single().Text);

    [Fact]
    public void Letters_keep_off_a_hole_that_stands_in_their_place()
    {
        TextMark Letters(double up) => Develop.Blank(FaceTree.Create("angle", 1, [new("base", Loop.Rectangle(60, 40), []), new("flange", Loop.Rectangle(60, 25), [new RoundHole("A", new(30, up), 6)])],
            [new("base", new(60, 40), new(0, 40), "flange", 1, 2)]).Value, new Din6935()).Value.ToSheet().Marks.OfType<TextMark>().Single();
        Assert.True(Letters(5).At.Y < Letters(18).At.Y);
    }
}
