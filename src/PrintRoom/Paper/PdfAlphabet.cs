using System.Text;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Paper;

/// <summary>
/// Our own letters as Type 3 fonts (ISO 32000-1, 9.6.5): real text that a reader finds and copies, drawn by our strokes.
/// The fonts hold only the letters used, 255 to a font, each with the text it stands for.
/// </summary>
sealed class PdfAlphabet(PdfFile file)
{
    const int PerFont = 255;

    /// <summary>Font units are tenths of the capital height, so the font's size is the capital height in mm.</summary>
    const string Matrix = "[0.1 0 0 0.1 0 0]";

    readonly Dictionary<string, int> _places = [];
    readonly List<Placed> _letters = [];

    /// <summary>Font and code of a letter; the code is never 0.</summary>
    public (int Font, int Code) Place(Placed letter)
    {
        if (!_places.TryGetValue(letter.Stands, out var place))
        {
            _places[letter.Stands] = place = _letters.Count;
            _letters.Add(letter);
        }
        return (place / PerFont, place % PerFont + 1);
    }

    /// <summary>Writes the fonts; gives the resource dictionary that names them F0, F1 …</summary>
    public string Write()
    {
        var fonts = _letters.Chunk(PerFont).Select((letters, i) => $"/F{i} {WriteFont(letters)} 0 R");
        return $"<</Font<<{string.Concat(fonts)}>>>>";
    }

    int WriteFont(Placed[] letters)
    {
        var drawn = letters.Select(l => file.AddStream(Drawing(l.Glyph))).ToArray();
        var box = letters.SelectMany(l => l.Glyph.Strokes).SelectMany(s => s.Points(0.05)).DefaultIfEmpty(Vec2.Zero);
        var bounds = Box.Round(box).Grown(1);
        var codes = string.Concat(letters.Select((_, i) => $"/g{i + 1}"));
        var drawings = string.Concat(drawn.Select((d, i) => $"/g{i + 1} {d} 0 R"));
        var widths = string.Join(' ', letters.Select(l => N(Advance(l.Glyph))));
        var meanings = file.AddStream(Meanings(letters));
        return file.Add(
            $"<</Type/Font/Subtype/Type3/FontBBox[{N(bounds.Left)} {N(bounds.Bottom)} {N(bounds.Right)} {N(bounds.Top)}]/FontMatrix{Matrix}" +
            $"/CharProcs<<{drawings}>>/Encoding<</Type/Encoding/Differences[1{codes}]>>/FirstChar 1/LastChar {letters.Length}" +
            $"/Widths[{widths}]/ToUnicode {meanings} 0 R/Resources<<>>>>");
    }

    static string Drawing(Glyph glyph)
    {
        var drawing = new StringBuilder($"{N(Advance(glyph))} 0 d0\n1 w 1 J 1 j [] 0 d\n");
        foreach (var stroke in glyph.Strokes) drawing.Append(PdfPath.Of(stroke, 3)).Append("S\n");
        return drawing.ToString();
    }

    /// <summary>The map from codes to text (9.10.3), a hundred lines to a block as the format asks.</summary>
    static string Meanings(Placed[] letters)
    {
        var map = new StringBuilder(
            "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CIDSystemInfo <</Registry(Adobe)/Ordering(UCS)/Supplement 0>> def\n" +
            "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<00> <FF>\nendcodespacerange\n");
        foreach (var block in letters.Select((l, i) => $"<{i + 1:X2}> <{PdfFile.Utf16(l.Stands)}>\n").Chunk(100))
            map.Append($"{block.Length} beginbfchar\n").AppendJoin("", block).Append("endbfchar\n");
        return map.Append("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n").ToString();
    }

    /// <summary>With the gap to the next letter, or a reader would see a break of words in it.</summary>
    static double Advance(Glyph glyph) => glyph.Width + Lettering.Gap;

    static string N(double value) => Figures.Of(value, 3);
}
