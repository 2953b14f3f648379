using System.Globalization;
using System.Text;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Paper;

/// <summary>One sheet as page content, in mm: figures to 0.0001 mm.</summary>
sealed class PdfPage(PdfAlphabet alphabet)
{
    const int Decimals = 4;

    readonly StringBuilder _content = new($"{Figures.Of(Pdf.PointsPerMm, 9)} 0 0 {Figures.Of(Pdf.PointsPerMm, 9)} 0 0 cm\n1 j\n");
    Pen _pen;

    public string Content => _content.ToString();

    public void Draw(Mark mark)
    {
        if (mark is TextMark text)
        {
            Letter(text);
            return;
        }
        var filled = mark is PathMark { Filled: true };
        if (!filled) Take(Pens.Of(mark));
        foreach (var curve in Curves.Of(mark))
            _content.Append(PdfPath.Of(curve, Decimals)).Append(filled ? "f\n" : "S\n");
    }

    void Take(Pen pen)
    {
        if (pen.Equals(_pen)) return;
        _pen = pen;
        var dashes = pen.Continuous ? "" : string.Join(' ', pen.Dashes.Select(d => N(d)));
        _content.Append($"{N(pen.Width)} w {(pen.Continuous ? 1 : 0)} J [{dashes}] 0 d\n");
    }

    /// <summary>A run of letters in one font is one string: the fonts' widths are those of <see cref="Lettering.Line"/>.</summary>
    void Letter(TextMark text)
    {
        if (text.Text.Length == 0 || text.Height == 0) return;
        var start = Lettering.Start(text);
        var (sin, cos) = Math.SinCos(text.Turn);
        _content.Append($"BT\n{N(cos)} {N(sin)} {N(-sin)} {N(cos)} {N(start.X)} {N(start.Y)} Tm\n");
        var font = -1;
        foreach (var place in Lettering.Line(text.Text).Select(alphabet.Place))
        {
            if (place.Font != font) _content.Append($"{(font < 0 ? "" : "> Tj\n")}/F{font = place.Font} {N(text.Height)} Tf\n<");
            _content.Append(place.Code.ToString("X2", CultureInfo.InvariantCulture));
        }
        _content.Append("> Tj\nET\n");
    }

    static string N(double value) => Figures.Of(value, Decimals);
}
