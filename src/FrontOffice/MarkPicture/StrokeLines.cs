using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.Stores.Photographs;

namespace WitnessMark.FrontOffice.MarkPicture;

/// <summary>Strokes as lines that a screen or a printer draws, the same on both: the picture's width counts 1000 units, y down.</summary>
public static class StrokeLines
{
    public const double Wide = 1000;

    /// <summary>Of the head of an arrow, in line widths and at least so many units.</summary>
    const double Head = 6, LeastHead = 20;

    /// <summary>Capital height of words, in line widths.</summary>
    const double Letters = 9;

    /// <param name="tall">Height of the picture over its width.</param>
    public static ImmutableArray<PictureMark> Of(IEnumerable<Stroke> strokes, double tall) => [.. strokes.Select(s => Of(s, tall))];

    public static PictureMark Of(Stroke stroke, double tall) => new(Path(stroke, tall), Colour(stroke.Ink), Width(stroke.Weight));

    /// <summary>Each holds 4.5 to 1 against the white rim (WCAG 2.2, 1.4.3).</summary>
    public static string Colour(Ink ink) => ink switch { Ink.Red => "#b3140c", Ink.Blue => "#0f3fa6", Ink.Green => "#0b5d2c", _ => "#0c0c0c" };

    /// <summary>Units.</summary>
    public static double Width(int weight) => weight switch { 1 => 2.5, 2 => 4.5, 3 => 8, _ => 13 };

    static string Path(Stroke stroke, double tall)
    {
        var at = stroke.Places.Select(p => new Vec2(p.X * Wide, p.Y * Wide * tall)).ToArray();
        return stroke.Kind switch
        {
            StrokeKind.Arrow => Arrow(at[0], at[^1], Width(stroke.Weight)),
            StrokeKind.Circle => Circle(at[0], at[0].DistanceTo(at[^1])),
            StrokeKind.Words => Written(stroke, at[0]),
            _ => Through(at),
        };
    }

    static string Through(IReadOnlyList<Vec2> at)
    {
        var path = new StringBuilder("M").Append(Of(at[0]));
        // A dot is a line to its own place: the round ends of the pen draw it.
        foreach (var place in at.Count == 1 ? at : at.Skip(1)) path.Append('L').Append(Of(place));
        return path.ToString();
    }

    static string Arrow(Vec2 from, Vec2 to, double width)
    {
        if (from.DistanceTo(to) < 1e-6) return Through([from]);
        var back = (from - to).Unit * Math.Max(Head * width, LeastHead);
        return $"{Through([from, to])}{Through([to + back.Turned(0.45), to, to + back.Turned(-0.45)])}";
    }

    static string Circle(Vec2 middle, double radius)
    {
        var r = N(Math.Max(radius, 1));
        return $"M{Of(middle - new Vec2(Math.Max(radius, 1), 0))}a{r} {r} 0 1 0 {N(2 * Math.Max(radius, 1))} 0a{r} {r} 0 1 0 {N(-2 * Math.Max(radius, 1))} 0";
    }

    /// <summary>In the house's own letters, which need no font.</summary>
    static string Written(Stroke stroke, Vec2 at)
    {
        var text = new TextMark(new(at.X, -at.Y), stroke.Text, Width(stroke.Weight) * Letters, Layers.Text);
        return string.Concat(Lettering.Strokes(text).Select(line => Through([.. line.Select(p => new Vec2(p.X, -p.Y))])));
    }

    static string Of(Vec2 p) => $"{N(p.X)} {N(p.Y)}";

    static string N(double value) => value.ToString("0.##", CultureInfo.InvariantCulture);
}
