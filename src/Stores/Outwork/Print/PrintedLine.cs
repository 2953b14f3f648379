using System.Collections.Immutable;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Tags;

namespace WitnessMark.Stores.Outwork.Print;

/// <summary>A strip of a list, so low that it fits on any page.</summary>
/// <param name="Height">mm.</param>
/// <param name="Marks">With the strip's top at so many mm above the sheet's lower edge.</param>
sealed record PrintedLine(double Height, Func<double, IEnumerable<Mark>> Marks)
{
    /// <summary>ISO 3098 type B: lines of text stand 1.7 lettering heights apart.</summary>
    const double Leading = 1.7;

    public static PrintedLine Space(double mm) => new(mm, _ => []);

    public static PrintedLine Rule(double left, double right, Stroke stroke) =>
        new(1.5, top => [new LineMark(new(left, top), new(right, top), Layers.Frame, stroke)]);

    public static PrintedLine Of(params ImmutableArray<TextMark> words) =>
        new(Leading * words.Max(w => w.Height), top => words.Select(w => w with { At = new(w.At.X, top - w.Height) }));

    /// <summary>Words broken into lines; nothing for no words.</summary>
    public static IEnumerable<PrintedLine> Wrapped(string text, double height, double left, double right, Tone tone = Tone.Ink) =>
        Fit.Lines(text, height, right - left).Select(l => Of(At(left, l, height, tone)));

    /// <summary>Strips that no page break parts; together low enough for any page.</summary>
    public static PrintedLine Together(ImmutableArray<PrintedLine> strips) =>
        new(strips.Sum(s => s.Height), top => strips.SelectMany((s, i) => s.Marks(top - strips.Take(i).Sum(above => above.Height))));

    /// <summary>One line of words, its height still open.</summary>
    public static TextMark At(double x, string text, double height, Tone tone = Tone.Ink, Anchor anchor = Anchor.Left) =>
        new(new(x, 0), text, height, Layers.Text, anchor, Tone: tone);

    /// <summary>The same strip with more drawn on it.</summary>
    public PrintedLine With(Func<double, IEnumerable<Mark>> more) => this with { Marks = top => Marks(top).Concat(more(top)) };
}
