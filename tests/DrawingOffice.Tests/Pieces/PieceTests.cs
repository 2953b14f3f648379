using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Pieces.Sheets;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;
using WitnessMark.PrintRoom;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Pieces;

public class PieceTests
{
    static readonly Piece s_web = new("web", 2, new Loop([new(new(0, 0)), new(new(200, 0), 0.3), new(new(220, 60)), new(new(0, 60))]))
    {
        Openings = [new RoundHole("H1", new(40, 30), 10), new Slot("S1", new(120, 30), 12, 40, 0.4), new CutOut("C1", Loop.Of(new(70, 20), new(90, 20), new(90, 45)))],
        Creases = [new("web-flange", [new(0, 50), new(200, 50)], Math.PI / 2, 3, 5)],
        Witnesses = [new("station 2", [new(100, 0), new(100, 60)]), new("", [new(150, 15)])],
        Handed = true,
    };

    [Fact]
    [Truth(Grade.Property, "a mirror keeps areas and lengths, and the mirror of the mirror is the piece")]
    public void The_other_hand_is_a_mirror()
    {
        var other = s_web.TurnedOver();
        Assert.Equal(s_web.Area, other.Area, 1e-9);
        Assert.True(other.Outline.SignedArea > 0);
        Assert.All(other.Openings, o => Assert.True(o.Edge.SignedArea > 0));
        Assert.Equal(s_web.Creases[0].Angle, other.Creases[0].Angle);
        var back = other.TurnedOver();
        var corners = s_web.Outline.Corners.OrderBy(c => c.At.X).ThenBy(c => c.At.Y).Zip(back.Outline.Corners.OrderBy(c => c.At.X).ThenBy(c => c.At.Y));
        Assert.All(corners, c => Assert.Equal(c.First, c.Second));
        Assert.Equal(0, ((Slot)s_web.Openings[1]).Half.Unit.Cross(((Slot)back.Openings[1]).Half.Unit), 1e-12);
    }

    [Fact]
    [Truth(Grade.Property, "only what is cut lies on the cut layers; a scribed line and a bend have layers of their own")]
    public void Cut_bend_and_witness_keep_to_their_layers()
    {
        var sheet = s_web.ToSheet();
        Assert.Equal(new[] { Layers.Outline, Layers.Holes, Layers.Bends, Layers.Witness, Layers.Text }.Order(), sheet.Marks.Select(m => m.Layer).Distinct().Order());
        Assert.All(sheet.Marks, m => Assert.Equal(m.Layer is Layers.Outline or Layers.Holes, m.Stroke == Stroke.Cut));
        var words = sheet.Marks.OfType<TextMark>().Select(t => t.Text).ToList();
        Assert.Contains("1: 90° UP R3", words);
        Assert.Contains("station 2", words);
        Assert.Contains("web, 2 mm, 1 off of each hand: turn this over for the other", words);
    }

    [Fact]
    [Truth(Grade.Property, "corners of a chorded edge lie on it, each listed once")]
    public void A_piece_of_many_corners_is_listed_by_their_places()
    {
        var wave = Enumerable.Range(0, 81).Select(k => new Vec2(10 * k, 20 * Math.Sin(k / 6.0)));
        var piece = new Piece("flange", 1.2, Loop.Of([.. wave, new(800, 100), new(0, 100)]));
        var drawing = DrawingOffice.Drafting.DetailDrawing.Draw(PiecePart.Of(piece), new("Flange", "Q-1"));
        var words = drawing.Sheets.SelectMany(s => s.Marks).OfType<TextMark>().Select(t => t.Text).ToHashSet();
        Assert.Contains("Corners, anticlockwise", words);
        Assert.All(Enumerable.Range(1, 83), n => Assert.Contains($"{n}", words));
    }
}
