using System.Runtime.CompilerServices;
using System.Text;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Letters;

namespace WitnessMark.PrintRoom.Screen;

/// <summary>
/// A line of text as SVG path data in tenths of the capital height, y down, from the start of its line: a drawing in a browser is redrawn
/// while someone types, so each letter's strokes are spelled once and only its place is worked out again.
/// </summary>
static class SvgLetters
{
    static readonly ConditionalWeakTable<Glyph, string> s_spelled = [];

    public static string Path(string text)
    {
        var path = new StringBuilder();
        foreach (var letter in Lettering.Line(text))
            if (!letter.Glyph.Strokes.IsEmpty)
                path.Append('M').Append(N(letter.X)).Append(" 0").Append(s_spelled.GetValue(letter.Glyph, Spelled));
        return path.ToString();
    }

    /// <summary>Relative moves from the letter's left foot. Rounded to a thousandth of a pen, at most 40 to a stroke.</summary>
    static string Spelled(Glyph glyph)
    {
        var path = new StringBuilder();
        var at = Vec2.Zero;
        foreach (var stroke in glyph.Strokes)
        {
            path.Append('m').Append(From(at, stroke.Start));
            at = stroke.Start;
            foreach (var piece in stroke.Pieces)
            {
                path.Append(piece.Straight ? $"l{From(at, piece.End)}" : $"c{From(at, piece.C1)} {From(at, piece.C2)} {From(at, piece.End)}");
                at = piece.End;
            }
        }
        return path.ToString();
    }

    static string From(Vec2 at, Vec2 to) => $"{N(to.X - at.X)} {N(at.Y - to.Y)}";

    static string N(double value) => Figures.Of(value, 3);
}
