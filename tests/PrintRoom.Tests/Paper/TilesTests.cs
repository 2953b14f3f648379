using WitnessMark.Maths;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.PrintRoom.Shapes;
using WitnessMark.PrintRoom.Tests.Shapes;
using WitnessMark.Tests;

namespace WitnessMark.PrintRoom.Tests.Paper;

public class TilesTests
{
    static readonly Sheet s_big = new("Backing plate", 500, 400,
    [
        new PathMark([new(10, 10), new(490, 10), new(490, 350), new(250, 390), new(10, 350)], true, false, Layers.Outline, Stroke.Outline),
        new CircleMark(new(250, 200), 120, Layers.Holes, Stroke.Outline),
        new ArcMark(new(250, 200), 150, 0.1, 5, Layers.Bends, Stroke.Fold),
        new CircleMark(new(250, 200), 235, Layers.Hidden, Stroke.Hidden),
        new EllipseMark(new(250, 200), 90, 40, 0.4, Layers.Centre, Stroke.Centre),
        new TextMark(new(250, 200), "ACROSS EVERY JOINT ⌀240 ±0.2", 12, Layers.Text, Anchor.Middle),
        new LineMark(new(30, 30), new(60, 30), Layers.Dimensions, Stroke.Dimension),
    ]);

    [Theory, InlineData(1), InlineData(2), InlineData(6)]
    [Truth(Grade.SecondImplementation, "Poppler's pdftoppm at 254 dpi: ten pixels are a mm")]
    public void Both_check_lines_measure_a_hundred_mm_on_the_rendered_page(int page)
    {
        var tiles = Tiles.Split(s_big, PaperSize.A4);
        var raster = Outside.Page(Pdf.Write(tiles), page, 254);
        // The ticks reach 2 mm to each side of lines that lie 3 mm inside the printer's margin of 10.
        var across = raster.AlongRow(11.6, 10, 140);
        var up = raster.AlongColumn(11.6, 10, 140);
        Assert.Equal(2, across.Count);
        Assert.Equal(2, up.Count);
        Assert.InRange(across[1].Middle - across[0].Middle, 99.95, 100.05);
        Assert.InRange(up[1].Middle - up[0].Middle, 99.95, 100.05);
    }

    [Fact, Truth(Grade.SecondImplementation, "Poppler's pdftotext")]
    public void Every_page_says_which_it_is_and_to_measure_it()
    {
        var tiles = Tiles.Split(s_big, PaperSize.A4);
        var pages = Outside.PdfText(Pdf.Write(tiles)).Split('\f', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(tiles.Count, pages.Length);
        Assert.All(tiles.Zip(pages), p =>
        {
            Assert.Contains(p.First.Title["Backing plate ".Length..], p.Second);
            Assert.Contains("100 mm: measure both lines before cutting", p.Second);
        });
        Assert.Contains("joins A2", pages[0]);
    }

    [Theory, InlineData("A4", 10, 10), InlineData("A3", 10, 10), InlineData("A4", 6, 0), InlineData("A4", 50, 20)]
    [Truth(Grade.Property, "the pages laid on each other are the drawing")]
    public void Every_point_of_the_drawing_is_on_a_page_and_pages_agree_where_they_overlap(string name, double overlap, double margin)
    {
        var paper = name == "A4" ? PaperSize.A4 : PaperSize.A3;
        var pages = Tiles.Split(s_big, paper, overlap, margin).Select(page => (Window: Window(page, margin), Shift: Placed(page), page.Marks)).ToList();
        foreach (var layer in s_big.Marks.GroupBy(m => m.Layer))
        {
            var shown = pages.Select(p => p.Marks.Where(m => m.Layer == layer.Key).SelectMany(Drawn.Pieces).ToArray()).ToList();
            foreach (var point in layer.SelectMany(m => Drawn.Points(m, 5)))
            {
                Assert.Contains(pages, p => p.Window.Grown(0.01).Holds(point + p.Shift));
                // Every page that has room for the place must show the line there.
                for (var i = 0; i < pages.Count; i++)
                    if (pages[i].Window.Grown(-0.01).Holds(point + pages[i].Shift))
                        Assert.True(Drawn.Near(shown[i], point + pages[i].Shift, 0.01), $"{point} is lost on page {i}");
            }
        }
    }

    [Fact, Truth(Grade.Property, "the drawing keeps inside the window of its page")]
    public void Nothing_is_drawn_into_the_margin()
    {
        foreach (var page in Tiles.Split(s_big, PaperSize.A4, 10, 12))
        {
            Assert.All(page.Marks.Where(m => m.Layer != Layers.Check), m => Assert.True(Window(page, 12).Grown(0.7).Holds(Box.Of(m)!.Value), m.ToString()));
            Assert.All(page.Marks, m => Assert.True(new Box(12, 12, page.Width - 12, page.Height - 12).Grown(0.01).Holds(Box.Of(m)!.Value), m.ToString()));
        }
    }

    [Fact, Truth(Grade.Property, "neighbours show the same crosses")]
    public void Crosses_of_neighbours_lie_on_each_other()
    {
        var pages = Tiles.Split(s_big, PaperSize.A4).ToDictionary(p => p.Title.Split(' ')[2], p => (Shift: Placed(p), Page: p));
        var (a1, a2) = (Crosses("A1"), Crosses("A2"));
        Assert.Equal(2, a1.Count(c => a2.Any(o => o.DistanceTo(c) < 1e-9)));

        List<Vec2> Crosses(string name) => [.. pages[name].Page.Marks.OfType<CircleMark>().Where(c => c.Layer == Layers.Check).Select(c => c.Centre - pages[name].Shift)];
    }

    [Fact, Truth(Grade.Property, "paper is not wasted")]
    public void A_small_part_takes_one_page_and_empty_pages_are_left_out()
    {
        Assert.Single(Tiles.Split(Examples.Plate, PaperSize.A4));
        var corners = new Sheet("Corners", 900, 900, [new LineMark(new(0, 0), new(20, 0), "A", Stroke.Thin), new LineMark(new(880, 900), new(900, 900), "A", Stroke.Thin)]);
        Assert.Equal(2, Tiles.Split(corners, PaperSize.A4).Count);
    }

    [Fact, Truth(Grade.Property, "bad input is refused in one sentence")]
    public void What_cannot_be_tiled_is_refused()
    {
        Assert.Contains("overlap", Refused(() => Tiles.Split(s_big, PaperSize.A4, 2)));
        Assert.Contains("overlap", Refused(() => Tiles.Split(s_big, PaperSize.A4, double.NaN)));
        Assert.Contains("margin", Refused(() => Tiles.Split(s_big, PaperSize.A4, 10, 60)));
        Assert.Contains("margin", Refused(() => Tiles.Split(s_big, new("card", 105, 148))));
        Assert.Contains("larger paper", Refused(() => Tiles.Split(new("Fence", 90_000, 10, [new LineMark(Vec2.Zero, new(90_000, 9000), "A", Stroke.Thin)]), PaperSize.A4)));

        static string Refused(Action act) => Assert.Throws<RefusedException>(act).Message;
    }

    static Box Window(Sheet page, double margin) => new(margin + Tiles.Strip, margin + Tiles.Strip, page.Width - margin, page.Height - margin);

    /// <summary>From the drawing to the page: every page shows an arc about the drawing's middle.</summary>
    static Vec2 Placed(Sheet page) => page.Marks.OfType<ArcMark>().First(m => m.Layer != Layers.Check).Centre - new Vec2(250, 200);
}
