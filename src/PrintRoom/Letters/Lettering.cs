using System.Collections.Immutable;
using System.Text;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Letters;

/// <summary>
/// Text as strokes of one pen, in the manner of ISO 3098 type B: the pen is a tenth of the capital height.
/// The same on paper, cutter and screen, and on a machine without fonts.
/// Figures round a fraction slash (U+2044) are built up: <c>3 5⁄16″</c>. A combining accent sits on the letter before it.
/// </summary>
public static class Lettering
{
    /// <summary>Pen width as a part of the capital height.</summary>
    public const double Pen = 0.1;

    /// <summary>Between the pen's centre lines of neighbouring letters, tenths of the capital height: the clear gap is a pen less.</summary>
    internal const double Gap = 2.7;

    /// <summary>Chords of flattened letters stray by at most this part of the capital height.</summary>
    const double Flatness = 0.003;

    /// <summary>The text as polylines on the sheet, mm, in the order they are drawn.</summary>
    public static ImmutableArray<ImmutableArray<Vec2>> Strokes(TextMark text) =>
        [.. Curves(text).Select(c => c.Points(Flatness * text.Height))];

    /// <summary>The text as curves on the sheet, mm.</summary>
    public static ImmutableArray<Curve> Curves(TextMark text)
    {
        var start = Start(text);
        var scale = text.Height / 10;
        return [.. Line(text.Text).SelectMany(p => p.Glyph.Strokes.Select(s =>
            s.Map(at => start + scale * new Vec2(at.X + p.X, at.Y).Turned(text.Turn))))];
    }

    /// <summary>Length of the line of text, mm, between the outer centre lines of its strokes.</summary>
    /// <param name="height">Capital height, mm.</param>
    public static double Width(string text, double height) => Line(text) is { IsEmpty: false } line ? line[^1].End * height / 10 : 0;

    /// <summary>The box that the drawn text fills, pen included, mm; nothing when it draws nothing.</summary>
    public static Box? Bounds(TextMark text)
    {
        var strokes = Strokes(text);
        return strokes.IsEmpty ? null : Box.Round(strokes.SelectMany(s => s)).Grown(text.Height * Pen / 2);
    }

    /// <summary>The characters that the alphabet lacks, each once: they are drawn as a crossed box.</summary>
    public static ImmutableArray<string> Missing(string text) => [.. Line(text).Where(p => !p.Found).Select(p => p.Stands).Distinct()];

    /// <summary>Every character that has strokes or a width of its own.</summary>
    public static IEnumerable<Rune> Known => Alphabet.Own.Letters.Keys;

    /// <summary>The letters of one line, from x = 0, tenths of the capital height.</summary>
    public static ImmutableArray<Placed> Line(string text)
    {
        var line = ImmutableArray.CreateBuilder<Placed>();
        for (var i = 0; i < text.Length;)
        {
            var x = line.Count == 0 ? 0 : line[^1].End + Gap;
            if (FractionAt(text, i) is var (numerator, denominator))
            {
                line.Add(new(Fraction.Of(Alphabet.Own, numerator, denominator), $"{numerator}\u2044{denominator}", x));
                i += line[^1].Stands.Length;
                continue;
            }
            var found = Rune.TryGetRuneAt(text, i, out var rune);
            if (found && line.Count > 0 && Alphabet.Own.Accent(rune, out var accent, out var lifted)) line[^1] = Accented(line[^1], rune, accent, lifted);
            else line.Add(One(found ? rune : Rune.ReplacementChar, x));
            i += found ? rune.Utf16SequenceLength : 1;
        }
        return line.ToImmutable();
    }

    static Placed One(Rune rune, double x) => Alphabet.Own.Letters.TryGetValue(rune, out var glyph)
        ? new(glyph, rune.ToString(), x)
        : new(Alphabet.Box, rune.ToString(), x, false);

    static Placed Accented(Placed letter, Rune mark, ImmutableArray<Curve> accent, bool lifted)
    {
        var bare = letter.Stands is "i" or "j" ? Alphabet.Own.Bare(letter.Stands[0], lifted) : letter.Glyph;
        return letter with { Glyph = bare.Under(accent, lifted), Stands = letter.Stands + mark };
    }

    static (string Numerator, string Denominator)? FractionAt(string text, int from)
    {
        var bar = from;
        while (bar < text.Length && char.IsAsciiDigit(text[bar])) bar++;
        if (bar == from || bar >= text.Length || text[bar] != '\u2044') return null;
        var end = bar + 1;
        while (end < text.Length && char.IsAsciiDigit(text[end])) end++;
        return end == bar + 1 ? null : (text[from..bar], text[(bar + 1)..end]);
    }

    /// <summary>Where the pen's line of writing begins, mm: the anchor's point for text anchored left.</summary>
    public static Vec2 Start(TextMark text)
    {
        if (text.Anchor == Anchor.Left) return text.At;
        var width = Width(text.Text, text.Height);
        return text.At - Vec2.Polar(text.Turn, text.Anchor == Anchor.Middle ? width / 2 : width);
    }
}
