using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.Forms;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.Tests.DrawingOffice.Drafting;

public sealed class PaperTests
{
    static DetailDrawing Drawn(TitleFields title) => DetailDrawing.Draw(Parts.Bracket, title);

    [Fact]
    [Truth(Grade.Published, "ISO 5455:1979, 5.1, enlargement and full size (table read in a public copy)")]
    public void Enlargements_are_the_recommended_ones() =>
        Assert.Equal(["50:1", "20:1", "10:1", "5:1", "2:1", "1:1"], DrawingScale.Recommended.Where(s => s.Factor >= 1).Select(s => s.ToString()));

    [Fact]
    [Truth(Grade.FromMemory, "ISO 5455:1979, 5.1, reduction")]
    public void Reductions_are_the_recommended_ones() => Assert.Equal(
        ["1:2", "1:5", "1:10", "1:20", "1:50", "1:100", "1:200", "1:500", "1:1000", "1:2000", "1:5000", "1:10000"],
        DrawingScale.Recommended.Where(s => s.Factor < 1).Select(s => s.ToString()));

    [Fact]
    [Truth(Grade.Published, "ISO 216 as tabulated for drawing sheets: A4 210 × 297, A3 297 × 420 mm")]
    public void Sheets_have_the_sizes_of_the_A_series()
    {
        foreach (var part in new[] { Parts.Bracket, Parts.EightHoles, Parts.Link, Parts.Disc })
        {
            foreach (var sheet in DetailDrawing.Draw(part, Parts.Title("Size")).Sheets)
                Assert.Contains((sheet.Width, sheet.Height), new[] { (210.0, 297.0), (297, 210), (420, 297) });
        }
    }

    [Fact]
    [Truth(Grade.FromMemory, "ISO 5457:1999, table 1 and clause 4: drawing space 390 × 277 on A3, 20 mm filing margin")]
    public void The_frame_leaves_the_drawing_space_of_the_standard()
    {
        var sheet = DetailDrawing.Draw(Parts.EightHoles, Parts.Title("Frame")).Sheets[0];
        Assert.Equal(420, sheet.Width);
        Assert.Contains(sheet.Marks.OfType<PathMark>().Select(p => Box.Round(p.Points)), b => b == new Box(20, 10, 410, 287));
    }

    [Theory]
    [InlineData(Projection.FirstAngle, 1)]
    [InlineData(Projection.ThirdAngle, -1)]
    [Truth(Grade.Published, "Engineering Graphics, Unit II, figs 9.14 and 9.15 (poriyaan): in first angle the view from the left is drawn on the right, in third angle on the left (ISO 5456-2)")]
    public void The_projection_symbol_has_its_circles_on_the_right_side(Projection projection, int side)
    {
        var marks = Drawn(Parts.Title("Symbol") with { Projection = projection }).Sheets[0].Marks;
        var rings = marks.OfType<CircleMark>().Where(c => c.Layer == Layers.Frame).ToList();
        var cone = marks.OfType<PathMark>().Single(p => p.Points.Length == 4 && p.Points[0].Y - p.Points[3].Y < p.Points[1].Y - p.Points[2].Y);
        Assert.Equal(2, rings.Count);
        Assert.Equal(side, Math.Sign(rings[0].Centre.X - cone.Points.Average(p => p.X)));
        Assert.True(cone.Points[0].X < cone.Points[1].X, "the small end is on the left");
        Assert.Equal(cone.Points[0].Y - cone.Points[3].Y, 2 * rings.Min(r => r.Radius), 1e-9);
        Assert.Equal(cone.Points[1].Y - cone.Points[2].Y, 2 * rings.Max(r => r.Radius), 1e-9);
    }

    [Fact]
    [Truth(Grade.FromMemory, "ISO 3098-0, preferred heights 2.5, 3.5, 5, 7 mm")]
    public void Lettering_has_preferred_heights_and_none_is_smaller_than_2_5()
    {
        var sheets = Drawn(Parts.Title("Heights")).Sheets.AddRange(ReadingSheet.Draw(new()));
        Assert.All(sheets.SelectMany(Sheets.Texts), t => Assert.Contains(t.Height, new[] { 2.5, 3.5, 5, 7 }));
    }

    [Fact]
    public void The_title_block_says_everything_once()
    {
        var title = Parts.Title("Battery bracket") with { Cautions = ["Brake part: have it checked by someone licensed to before it goes on the road."] };
        var texts = Sheets.Texts(Drawn(title).Sheets[0]).ToList();
        foreach (var wanted in new[] { "Battery bracket", "WM-0417", "Mild steel sheet, CR4", "16 SWG (1.63 mm)", "T. Marlow", "2026-11-25", "sample S-12, survey 3", "1:1", "mm" })
            Assert.Single(texts, t => t.Text == wanted);
        Assert.Contains(texts, t => t.Tone == Tone.Warn && t.Text.StartsWith("Brake part", StringComparison.Ordinal));
        Assert.Contains(texts, t => t.Text.Contains("ISO 2768-m", StringComparison.Ordinal));
    }

    [Fact]
    public void Long_words_are_shortened_where_it_shows()
    {
        var title = Parts.Title(string.Join(' ', Enumerable.Repeat("Bracket, very long in the name,", 6)));
        var sheet = Drawn(title).Sheets[0];
        Assert.Contains(Sheets.Texts(sheet), t => t.Text.EndsWith('…'));
        Assert.Null(Sheets.Overlap(sheet));
    }
}
