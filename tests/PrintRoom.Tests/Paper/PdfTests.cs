using System.Text;
using CsCheck;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.Tests;

namespace WitnessMark.PrintRoom.Tests.Paper;

public class PdfTests
{
    [Fact, Truth(Grade.SecondImplementation, "Poppler's pdftoppm at 254 dpi: ten pixels are a mm")]
    public void A_rendered_line_has_its_length_and_its_place()
    {
        var marks = new Mark[]
        {
            new LineMark(new(30, 40), new(30, 44), Layers.Check, Stroke.Thin),
            new LineMark(new(130, 40), new(130, 44), Layers.Check, Stroke.Thin),
            new LineMark(new(50, 60), new(54, 60), Layers.Check, Stroke.Thin),
            new LineMark(new(50, 260), new(54, 260), Layers.Check, Stroke.Thin),
        };
        var page = Outside.Page(Pdf.Write([new("scale", 210, 297, [.. marks])]), 1, 254);
        var across = page.AlongRow(42, 0, 210);
        var up = page.AlongColumn(52, 0, 297);
        Assert.Equal(2, across.Count);
        Assert.Equal(2, up.Count);
        Assert.InRange(across[1].Middle - across[0].Middle, 99.95, 100.05);
        Assert.InRange(across[0].Middle, 29.9, 30.1);
        Assert.InRange(up[1].Middle - up[0].Middle, 199.95, 200.05);
        Assert.InRange(up[0].Middle, 59.9, 60.1);
    }

    [Theory, InlineData(Stroke.Outline, 0.5), InlineData(Stroke.Thin, 0.25), InlineData(Stroke.Fold, 0.25)]
    [Truth(Grade.SecondImplementation, "Poppler's pdftoppm at 1270 dpi: fifty pixels are a mm; the widths are ISO 128's group 0.5")]
    public void A_rendered_line_is_as_wide_as_its_kind(Stroke stroke, double width)
    {
        var pdf = Pdf.Write([new("width", 20, 20, [new LineMark(new(10.01, 1), new(10.01, 19), Layers.Outline, stroke)])]);
        Assert.Equal(width, Assert.Single(Outside.Page(pdf, 1, 1270).AlongRow(10, 0, 20)).Ink, 0.021);
    }

    [Fact, Truth(Grade.SecondImplementation, "Poppler's pdftoppm at 508 dpi: twenty pixels are a mm")]
    public void Rendered_letters_stand_where_the_strokes_are()
    {
        var text = new TextMark(new(100, 50), "HiH", 20, Layers.Text, Anchor.Middle);
        var stems = Outside.Page(Pdf.Write([new("text", 210, 100, [text])]), 1, 508).AlongRow(55, 0, 210);
        var strokes = Lettering.Strokes(text).Where(s => s[0].X == s[^1].X && s[0].Y != s[^1].Y && s.Max(p => p.Y) - s.Min(p => p.Y) > 10).Select(s => s[0].X).Order();
        Assert.Equal(5, stems.Count);
        Assert.All(strokes.Zip(stems), p => Assert.Equal(p.First, p.Second.Middle, 0.05));
        Assert.All(stems, s => Assert.Equal(2, s.Ink, 0.05));
    }

    [Fact, Truth(Grade.SecondImplementation, "Poppler's pdftotext")]
    public void The_words_can_be_found_signs_and_all()
    {
        var text = Outside.PdfText(Pdf.Write([Examples.Every]));
        Assert.Contains("⌀12.7 ±0.05 at 45° 3 5⁄16″", string.Join(' ', text.Split([' ', '\n', '\f'], StringSplitOptions.RemoveEmptyEntries)));
    }

    [Fact, Truth(Grade.SecondImplementation, "Poppler's pdftotext")]
    public void More_letters_than_one_font_holds_are_found_too()
    {
        var all = Lettering.Known.Select(r => r.ToString()).Where(l => !string.IsNullOrWhiteSpace(l) && l[0] != (char)0xAD).Concat(Enumerable.Range(0x3041, 80).Select(c => ((char)c).ToString())).Concat(Enumerable.Range(0x400, 80).Select(c => ((char)c).ToString())).ToList();
        var lines = all.Chunk(25).Select((row, i) => (Mark)new TextMark(new(10, 285 - 9 * i), string.Concat(row), 4, Layers.Text));
        var pdf = Pdf.Write([new("many", 210, 297, [.. lines])], new(Compressed: false));
        Assert.Contains("/F1 ", Encoding.Latin1.GetString(pdf));
        var text = Outside.PdfText(pdf);
        Assert.Equal("", string.Concat(all.Where(letter => !text.Contains(letter))));
    }

    [Fact, Truth(Grade.SecondImplementation, "Poppler's pdfinfo; ISO 216 sizes in points")]
    public void Pages_keep_their_own_sizes()
    {
        var info = Outside.PdfInfo(Pdf.Write([Examples.Every, Examples.Plate], new("Two sheets Ğ", new DateTimeOffset(2001, 2, 3, 4, 5, 6, TimeSpan.Zero))));
        Assert.Contains("Pages:           2", info);
        Assert.Contains("Title:           Two sheets Ğ", info);
        Assert.Contains("595.276 x 841.89 pts (A4)", info);
        Assert.Contains("566.929 x 425.197 pts", info);
        Assert.Contains("2001", info);
    }

    [Theory, InlineData(true), InlineData(false)]
    [Truth(Grade.Property, "the same in, the same out")]
    public void The_same_sheets_give_the_same_bytes(bool compressed)
    {
        var options = new PdfOptions("Same", new DateTimeOffset(2001, 2, 3, 4, 5, 6, TimeSpan.Zero), compressed);
        Assert.Equal(Pdf.Write([Examples.Every, Examples.Plate], options), Pdf.Write([Examples.Every, Examples.Plate], options));
    }

    [Fact, Truth(Grade.Published, "ISO 32000-1, table 150: PrintScaling None asks the printer not to scale")]
    public void Printers_are_asked_not_to_scale() =>
        Assert.Contains("/PrintScaling/None", Encoding.Latin1.GetString(Pdf.Write([Examples.Plate])));

    [Fact, Truth(Grade.Published, "ISO 32000-1, 7.5.4: an entry of the cross-reference table is 20 bytes and points at its object")]
    public void Every_object_lies_where_the_table_says()
    {
        var text = Encoding.Latin1.GetString(Pdf.Write([Examples.Every, Examples.Plate]));
        var start = int.Parse(text[(text.LastIndexOf("startxref\n", StringComparison.Ordinal) + 10)..].Split('\n')[0]);
        Assert.StartsWith("xref\n0 ", text[start..]);
        var count = int.Parse(text[(start + 7)..].Split('\n')[0]);
        var entries = text.IndexOf('\n', start + 7) + 1;
        for (var i = 1; i < count; i++)
            Assert.StartsWith($"{i} 0 obj\n", text[int.Parse(text.Substring(entries + 20 * i, 10))..]);
    }

    [Fact, Truth(Grade.SecondImplementation, "Poppler's pdftotext, which complains of a broken file")]
    public void Whatever_the_words_a_reader_opens_it() =>
        Gen.Select(Gen.String, Gen.String).Array[10].Sample(texts =>
        {
            var sheets = texts.Select(t => new Sheet(t.Item1, 100, 50, [new TextMark(new(5, 5), t.Item2, 3.5, t.Item1)])).ToList();
            Outside.PdfText(Pdf.Write(sheets));
        }, iter: 3);

    [Fact, Truth(Grade.Property, "bad input is refused in one sentence")]
    public void What_cannot_be_a_page_is_refused()
    {
        Assert.Contains("tiles", Assert.Throws<RefusedException>(() => Pdf.Write([new("Rail", 6000, 300, [])])).Message);
        Assert.Contains("at least one", Assert.Throws<RefusedException>(() => Pdf.Write([])).Message);
        Assert.Contains("mark 1", Assert.Throws<RefusedException>(() => Pdf.Write([new("bad", 10, 10, [new CircleMark(new(1, 1), double.NaN, "A", Stroke.Thin)])])).Message);
        Assert.Contains("sheet size", Assert.Throws<RefusedException>(() => Pdf.Write([new("none", 0, 10, [])])).Message);
    }
}
