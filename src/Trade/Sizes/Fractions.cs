using System.Collections.Immutable;
using WitnessMark.Maths.Units;

namespace WitnessMark.Trade;

/// <summary>Inch fractions in lowest terms, exact (1 in = 25.4 mm).</summary>
public static class Fractions
{
    /// <summary>Every multiple of 1/denominator inch above zero, up to and including a length, smallest first.</summary>
    /// <param name="mm">Largest length, mm; from 0 to 100 000.</param>
    /// <param name="denominator">A power of two from 1 to 128.</param>
    public static ImmutableArray<NominalSize> UpTo(double mm, int denominator = 64)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(mm);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(mm, 100_000);
        if (denominator is < 1 or > 128 || !int.IsPow2(denominator))
            throw new ArgumentOutOfRangeException(nameof(denominator), denominator, "1, 2, 4 ... 128");
        var steps = (int)Math.Floor(mm / Inch.Mm * denominator + 1e-9);
        var sizes = ImmutableArray.CreateBuilder<NominalSize>(steps);
        for (var n = 1; n <= steps; n++) sizes.Add(Of(n, denominator));
        return sizes.MoveToImmutable();
    }

    /// <summary>The largest power of two left in the denominator: 1 for whole inches, 64 for odd sixty-fourths.</summary>
    public static int LowestDenominator(int numerator, int denominator)
    {
        while (denominator > 1 && numerator % 2 == 0) (numerator, denominator) = (numerator / 2, denominator / 2);
        return denominator;
    }

    static NominalSize Of(int numerator, int denominator) =>
        new(Inch.Fraction(numerator, denominator) + " in", "inch fraction", Inch.ToMm((double)numerator / denominator), Sources.Exact);
}
