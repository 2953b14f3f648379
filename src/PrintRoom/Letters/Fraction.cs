using System.Collections.Immutable;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Letters;

/// <summary>A fraction as it is lettered: small figures, raised and lowered, parted by a slanting bar.</summary>
static class Fraction
{
    /// <summary>Between small figures.</summary>
    const double Gap = 1.8;

    /// <summary>From a figure to the middle of the bar.</summary>
    const double Clear = 1.7;

    static readonly Glyph s_bar = new(0, [Curve.Straight([new(-1.9, -0.2), new(1.9, 10.2)])]);

    public static Glyph Of(Alphabet alphabet, string numerator, string denominator)
    {
        var strokes = ImmutableArray.CreateBuilder<Curve>();
        var bar = Figures(strokes, numerator, alphabet.Numerator, 0) + Clear;
        strokes.AddRange(s_bar.ShiftedBy(new(bar, 0)));
        var end = Figures(strokes, denominator, alphabet.Denominator, bar + Clear);
        return new(end, strokes.ToImmutable());
    }

    static double Figures(ImmutableArray<Curve>.Builder strokes, string digits, Func<char, Glyph> drawn, double x)
    {
        foreach (var digit in digits)
        {
            var figure = drawn(digit);
            strokes.AddRange(figure.ShiftedBy(new(x, 0)));
            x += figure.Width + Gap;
        }
        return x - Gap;
    }
}
