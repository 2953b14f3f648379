using WitnessMark.Maths;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.PrintRoom.Shapes;
using WitnessMark.PrintRoom.Tags;
using WitnessMark.Tests;
using ZXing;
using ZXing.Common;

namespace WitnessMark.PrintRoom.Tests.Tags;

public class LabelTests
{
    const string Address = "https://192.168.178.120:5001/t/K7QM2XD4";

    static readonly Label Hinge = new("WM:K7QM2XD4", "K7QM-2XD4", "Bonnet hinge bracket, upper, with its long pin", "LH, 1 of 2");

    public static TheoryData<string> Grids => [.. LabelGrid.Common.Select(g => g.Name)];

    [Theory, MemberData(nameof(Grids))]
    [Truth(Grade.SecondImplementation, "Poppler's pdftoppm at 300 dpi, a second frame at 200 where the first is not read, and ZXing.Net 0.16.11")]
    public void Every_label_of_a_printed_sheet_is_read_back(string name)
    {
        var grid = LabelGrid.Read(name).Value;
        var labels = Enumerable.Range(0, grid.Count).Select(i => Hinge with { Scanned = $"WM:K7QM{i:0000}" }).ToList();
        var pdf = Pdf.Write(LabelSheets.Draw(labels, grid));
        var (sharp, coarse) = (Outside.Page(pdf, 1, 300), Outside.Page(pdf, 1, 200));
        // ZXing misses the finders of about one sharp drawing in a hundred; a phone looks at frame after frame.
        Assert.All(labels, (label, i) => Assert.Equal(label.Scanned, Scan(sharp, grid.Label(i)) ?? Scan(coarse, grid.Label(i))));
        Assert.True(labels.Index().Count(l => Scan(sharp, grid.Label(l.Index)) is null) <= 1);
    }

    [Theory]
    [InlineData("63.5x38.1", 150, 0), InlineData("63.5x38.1", 300, 3), InlineData("38.1x21.2", 200, 0), InlineData("38.1x21.2", 300, 2)]
    [Truth(Grade.SecondImplementation, "Poppler's pdftoppm and ZXing.Net 0.16.11, on a coarse or blurred picture")]
    public void An_address_is_read_from_a_poor_picture(string name, int dotsPerInch, int blur)
    {
        var grid = LabelGrid.Read(name).Value;
        var page = Outside.Page(Pdf.Write(LabelSheets.Draw([Hinge with { Scanned = Address }], grid, grid.Count)), 1, dotsPerInch);
        Assert.Equal(Address, Scan(Blurred(page, blur), grid.Label(grid.Count - 1)));
    }

    [Fact]
    [Truth(Grade.Published, "ISO/IEC 18004: version 1 has 21 modules a side, each version four more; finder patterns 1:1:3:1:1 in three corners; quiet zone 4 modules")]
    public void The_code_has_its_finders_and_its_quiet_zone()
    {
        var matrix = QrCode.Matrix("WM:K7QM2XD4");
        Assert.Equal(21, matrix.Length);
        foreach (var (r, c) in new[] { (0, 0), (0, 14), (14, 0) })
        {
            Assert.Equal("1011101", string.Concat(Enumerable.Range(0, 7).Select(i => matrix[r + 3][c + i] ? '1' : '0')));
            Assert.Equal("1011101", string.Concat(Enumerable.Range(0, 7).Select(i => matrix[r + i][c + 3] ? '1' : '0')));
        }
        var drawn = Box.Round(QrCode.Draw("WM:K7QM2XD4", new(10, 20), 29).Cast<PathMark>().SelectMany(m => m.Points));
        Assert.Equal(new Box(14, 24, 35, 45), drawn);
    }

    [Theory, MemberData(nameof(Grids))]
    [Truth(Grade.Property, "nothing is drawn outside its label; code letters are at least 1.8 mm high, the least of ISO 3098")]
    public void Words_stay_on_their_label(string name)
    {
        var grid = LabelGrid.Read(name).Value;
        foreach (var label in new[] { Hinge, Hinge with { Title = new string('W', 300), Remark = string.Join(' ', Enumerable.Repeat("long", 90)) }, Hinge with { Title = "", Remark = "" } })
        {
            var sheet = Assert.Single(LabelSheets.Draw([label], grid, grid.Count));
            var box = grid.Label(grid.Count - 1);
            Assert.All(sheet.Marks.OfType<TextMark>(), t => Assert.True(box.Holds(Lettering.Bounds(t)!.Value), t.Text));
            Assert.All(sheet.Marks.OfType<PathMark>(), p => Assert.All(p.Points, at => Assert.True(box.Holds(at))));
            Assert.Equal("K7QM2XD4", string.Concat(sheet.Marks.OfType<TextMark>().Where(t => t.Text.All(c => char.IsAsciiLetterUpper(c) || char.IsAsciiDigit(c) || c == '-')).Take(2).Select(t => t.Text.Replace("-", "")))[..8]);
            Assert.All(sheet.Marks.OfType<TextMark>(), t => Assert.True(t.Height >= 1.8));
        }
    }

    [Fact]
    [Truth(Grade.Property, "labels do not overlap and lie on the paper")]
    public void Labels_lie_side_by_side_on_the_sheet()
    {
        foreach (var grid in LabelGrid.Common.Append(LabelGrid.Read("60x30,3x9").Value))
        {
            var boxes = Enumerable.Range(0, grid.Count).Select(i => grid.Label(i).Grown(-1e-6)).ToList();
            Assert.All(boxes, b => Assert.True(new Box(0, 0, grid.Paper.Width, grid.Paper.Height).Holds(b)));
            for (var i = 0; i < boxes.Count; i++) Assert.DoesNotContain(boxes.Skip(i + 1), boxes[i].Meets);
        }
    }

    [Theory]
    [InlineData("38x21", "38.1x21.2"), InlineData("300x20,1x1", "fit on A4"), InlineData("60x30,0x9", "1 to 50"), InlineData("", "nothing is given"), InlineData("9x9,2x2", "10 mm")]
    [Truth(Grade.Property, "a grid that cannot be is refused in words")]
    public void A_wrong_grid_is_refused(string text, string words) => Assert.Contains(words, LabelGrid.Read(text).Refusal!.Sentence);

    [Fact]
    [Truth(Grade.Property, "a sheet that cannot be printed is refused in words")]
    public void A_wrong_sheet_is_refused()
    {
        var grid = LabelGrid.Read("38.1x21.2").Value;
        Assert.Contains("1 to 65", Assert.Throws<RefusedException>(() => LabelSheets.Draw([Hinge], grid, 66)).Message);
        Assert.Throws<RefusedException>(() => LabelSheets.Draw([], grid));
        Assert.Contains("larger label", Assert.Throws<RefusedException>(() => LabelSheets.Draw([Hinge], LabelGrid.Read("20x12,2x2").Value)).Message);
        Assert.Throws<RefusedException>(() => QrCode.Matrix(new string('a', 121)));
        Assert.Equal(2, LabelSheets.Draw([.. Enumerable.Repeat(Hinge, 4)], grid, 63).Length);
    }

    /// <summary>What ZXing reads in the part of the page where the label lies.</summary>
    static string? Scan(Raster page, Box label)
    {
        int Pixel(double mm) => (int)Math.Round(mm * page.PerMm);
        var (left, top) = (Pixel(label.Left), page.Height - Pixel(label.Top));
        var (width, height) = (Math.Min(Pixel(label.Width), page.Width - left), Math.Min(Pixel(label.Height), page.Height - top));
        var grey = new byte[width * height];
        for (var y = 0; y < height; y++) Array.Copy(page.Grey, (top + y) * page.Width + left, grey, y * width, width);
        var source = new RGBLuminanceSource(grey, width, height, RGBLuminanceSource.BitmapFormat.Gray8);
        var hints = new Dictionary<DecodeHintType, object> { [DecodeHintType.TRY_HARDER] = true };
        return new ZXing.QrCode.QRCodeReader().decode(new BinaryBitmap(new HybridBinarizer(source)), hints)?.Text;
    }

    /// <summary>The mean over a square of so many pixels to each side.</summary>
    static Raster Blurred(Raster page, int reach)
    {
        byte Mean(int x, int y)
        {
            var (sum, count) = (0, 0);
            for (var v = Math.Max(0, y - reach); v <= Math.Min(page.Height - 1, y + reach); v++)
                for (var u = Math.Max(0, x - reach); u <= Math.Min(page.Width - 1, x + reach); u++, count++) sum += page.Grey[v * page.Width + u];
            return (byte)(sum / count);
        }
        return reach == 0 ? page : page with { Grey = [.. Enumerable.Range(0, page.Grey.Length).Select(i => Mean(i % page.Width, i / page.Width))] };
    }
}
