using System.Globalization;

namespace WitnessMark.Maths.Units;

/// <summary>The inch and its fractions.</summary>
public static class Inch
{
    /// <summary>mm in an inch, exact since 1959.</summary>
    public const double Mm = 25.4;

    /// <summary>Inches to mm with one rounding less than times 25.4: 3 in is 76.2, not 76.19999999999999.</summary>
    public static double ToMm(double inches) => inches * 254 / 10;

    /// <summary>A count of equal parts as mixed number in lowest terms: 53 of 16 is <c>3 5/16</c>.</summary>
    /// <param name="numerator">0 or more.</param>
    /// <param name="denominator">1 or more.</param>
    public static string Fraction(long numerator, int denominator)
    {
        var (whole, part) = Math.DivRem(numerator, denominator);
        if (part == 0) return whole.ToString(CultureInfo.InvariantCulture);
        var common = CommonDivisor(part, denominator);
        var fraction = string.Create(CultureInfo.InvariantCulture, $"{part / common}/{denominator / common}");
        return whole == 0 ? fraction : string.Create(CultureInfo.InvariantCulture, $"{whole} {fraction}");
    }

    static long CommonDivisor(long a, long b) => b == 0 ? a : CommonDivisor(b, a % b);
}
