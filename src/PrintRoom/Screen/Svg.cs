using System.Text;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Screen;

/// <summary>
/// SVG 1.1 in mm at true size: one user unit is one mm, figures to 0.001 mm. Each layer is a group of class <c>layer</c> with its name in
/// <c>data-layer</c>; each mark has the classes of its stroke and its tone. A page themes it with the custom properties
/// <c>--wm-ink</c>, <c>--wm-quiet</c>, <c>--wm-warn</c>, <c>--wm-accent</c> and <c>--wm-paper</c>.
/// </summary>
public static class Svg
{
    /// <summary>The style sheet that every picture carries; a page that forbids styles inside pictures takes it into its own.</summary>
    public const string Theme =
        ".wm-sheet .paper{fill:var(--wm-paper,#fff)}" +
        ".wm-sheet .layer>*{stroke:currentColor;color:var(--wm-ink,#1b1b1b)}" +
        ".wm-sheet .layer>.quiet{color:var(--wm-quiet,#6e6e6e)}" +
        ".wm-sheet .layer>.warn{color:var(--wm-warn,#b3261e)}" +
        ".wm-sheet .layer>.accent{color:var(--wm-accent,#1f5fa8)}" +
        ".wm-sheet .layer>.filled{fill:currentColor;stroke:none}" +
        ".wm-sheet .layer>.words{fill:transparent;stroke:none}";

    /// <exception cref="RefusedException">A mark has a coordinate that is no number, or the sheet no size.</exception>
    public static string Write(Sheet sheet, SvgOptions? options = null)
    {
        Guard.Check(sheet);
        options ??= SvgOptions.Default;
        var (width, height) = (N(sheet.Width), N(sheet.Height));
        var title = Escaped(sheet.Title);
        var svg = new StringBuilder();
        svg.Append($"<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"wm-sheet\" width=\"{width}mm\" height=\"{height}mm\" viewBox=\"0 0 {width} {height}\" ");
        svg.Append($"role=\"{(options.RealText ? "group" : "img")}\" aria-label=\"{title}\">\n<title>{title}</title>\n<style>{Theme}</style>\n");
        if (options.Paper) svg.Append($"<rect class=\"paper\" width=\"{width}\" height=\"{height}\" fill=\"#fff\"/>\n");
        foreach (var layer in sheet.Marks.GroupBy(m => m.Layer))
        {
            var name = Escaped(layer.Key);
            svg.Append($"<g class=\"layer\" data-layer=\"{name}\" fill=\"none\" stroke=\"#1b1b1b\" stroke-linejoin=\"round\">\n");
            foreach (var mark in layer) Draw(svg, mark, sheet.Height, options);
            svg.Append("</g>\n");
        }
        return svg.Append("</svg>\n").ToString();
    }

    static void Draw(StringBuilder svg, Mark mark, double height, SvgOptions options)
    {
        var shape = Shape(mark, height);
        if (shape.Length == 0) return;
        var filled = mark is PathMark { Filled: true };
        var classes = $"{Word(mark)} {mark.Tone.ToString().ToLowerInvariant()}{(filled ? " filled" : "")}";
        svg.Append($"<{shape} class=\"{classes}\"{(filled ? " fill=\"#1b1b1b\" stroke=\"none\"" : PenOf(mark))}");
        svg.Append(mark is TextMark && options.RealText ? " aria-hidden=\"true\"/>\n" : "/>\n");
        if (mark is TextMark text && options.RealText) Words(svg, text, height);
    }

    static string Shape(Mark mark, double height) => mark switch
    {
        LineMark m => $"line x1=\"{N(m.A.X)}\" y1=\"{N(height - m.A.Y)}\" x2=\"{N(m.B.X)}\" y2=\"{N(height - m.B.Y)}\"",
        CircleMark m => $"circle cx=\"{N(m.Centre.X)}\" cy=\"{N(height - m.Centre.Y)}\" r=\"{N(m.Radius)}\"",
        ArcMark m when Arcs.IsWhole(m) => $"circle cx=\"{N(m.Centre.X)}\" cy=\"{N(height - m.Centre.Y)}\" r=\"{N(m.Radius)}\"",
        ArcMark m => ArcPath(m, height),
        EllipseMark m => $"ellipse rx=\"{N(m.HalfA)}\" ry=\"{N(m.HalfB)}\" transform=\"{Placed(m.Centre, m.Turn, height)}\"",
        TextMark m => TextPath(m, height),
        PathMark { Points.IsDefaultOrEmpty: true } => "",
        PathMark m => $"path d=\"M{string.Join('L', m.Points.Select(p => Point(p, height)))}{(m.Closed || m.Filled ? "Z" : "")}\"",
        _ => throw new ArgumentException($"A mark of a kind unknown to the print room: {mark.GetType().Name}"),
    };

    static string ArcPath(ArcMark m, double height)
    {
        var (from, to) = (Arcs.At(m, 0), Arcs.At(m, 1));
        var r = N(m.Radius);
        var large = Math.Abs(m.Sweep) > Math.PI ? 1 : 0;
        var clockwise = m.Sweep > 0 ? 0 : 1;
        return $"path d=\"M{Point(from, height)}A{r} {r} 0 {large} {clockwise} {Point(to, height)}\"";
    }

    /// <summary>Drawn in tenths of the capital height, so the pen is 1 wide.</summary>
    static string TextPath(TextMark m, double height) => SvgLetters.Path(m.Text) is { Length: > 0 } path
        ? $"path d=\"{path}\" transform=\"{Placed(Lettering.Start(m), m.Turn, height)} scale({Figures.Of(m.Height / 10, 6)})\""
        : "";

    static string PenOf(Mark mark)
    {
        if (mark is TextMark) return " stroke-width=\"1\" stroke-linecap=\"round\"";
        var pen = Pens.Of(mark);
        var dashes = pen.Continuous ? "" : $" stroke-dasharray=\"{string.Join(' ', pen.Dashes.Select(N))}\"";
        return $" stroke-width=\"{N(pen.Width)}\" stroke-linecap=\"{(pen.Continuous ? "round" : "butt")}\"{dashes}";
    }

    /// <summary>Real text is stretched to the length of the lettering; a capital is taken as 0.7 of the font's size.</summary>
    static void Words(StringBuilder svg, TextMark text, double height)
    {
        if (text.Text.Length == 0) return;
        var anchor = text.Anchor switch { Anchor.Middle => "middle", Anchor.Right => "end", _ => "start" };
        svg.Append($"<text class=\"words\" font-size=\"{N(text.Height / 0.7)}\" text-anchor=\"{anchor}\" textLength=\"{N(Lettering.Width(text.Text, text.Height))}\" ");
        svg.Append($"lengthAdjust=\"spacingAndGlyphs\" fill=\"transparent\" stroke=\"none\" transform=\"{Placed(text.At, text.Turn, height)}\">{Escaped(text.Text)}</text>\n");
    }

    static string Word(Mark mark) => mark is TextMark ? "lettering" : mark.Stroke.ToString().ToLowerInvariant();

    static string Point(Vec2 p, double height) => $"{N(p.X)} {N(height - p.Y)}";

    static string N(double value) => Figures.Of(value, 3);

    static string Placed(Vec2 at, double turn, double height) =>
        $"translate({Point(at, height)}){(turn == 0 ? "" : $" rotate({Figures.Of(-turn * 180 / Math.PI, 6)})")}";

    /// <summary>Safe between tags and in a quoted attribute; what XML 1.0 forbids becomes the replacement character.</summary>
    static string Escaped(string text)
    {
        var safe = new StringBuilder();
        foreach (var rune in text.EnumerateRunes())
            safe.Append(rune.Value switch
            {
                '&' => "&amp;",
                '<' => "&lt;",
                '>' => "&gt;",
                '"' => "&quot;",
                '\t' or '\n' or '\r' => " ",
                < 0x20 or 0xFFFE or 0xFFFF => "\uFFFD",
                _ => rune.ToString(),
            });
        return safe.ToString();
    }
}
