using System.Collections.Immutable;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Letters;

/// <summary>A fraction as it is lettered: small figures, raised and lowered, parted by a slanting bar.</summary>
static class Fraction
{
    /// <summary>Between small figures.</summary>
    const double Gap = 1.5;

    static readonly Glyph s_bar = new(0, [Curve.Straight([new(-1.9, -0.2), new(1.9, 10.2)])]);

    public static ImmutableArray<Placed> Of(Alphabet alphabet, string numerator, string denominator)
    {
        var placed = ImmutableArray.CreateBuilder<Placed>();
        var x = Figures(placed, numerator, alphabet.Numerator, 0);
        placed.Add(new(s_bar, "\u2044", x + 0.6));
        Figures(placed, denominator, alphabet.Denominator, x + 1.2);
        return placed.ToImmutable();
    }

    static double Figures(ImmutableArray<Placed>.Builder placed, string digits, Func<char, Glyph> drawn, double x)
    {
        foreach (var digit in digits)
        {
            placed.Add(new(drawn(digit), digit.ToString(), x));
            x = placed[^1].End + Gap;
        }
        return x - Gap;
    }
}
