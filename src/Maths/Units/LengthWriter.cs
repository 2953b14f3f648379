using System.Globalization;

namespace WitnessMark.Maths.Units;

/// <summary>Writes lengths so that <see cref="Lengths.Read"/> reads them back to the style's rounding.</summary>
public static class LengthWriter
{
    /// <param name="mm">Finite, at most 1 000 000 either way.</param>
    /// <exception cref="RefusedException">Not a finite length, or a style outside its range.</exception>
    public static string Write(double mm, LengthStyle? style = null)
    {
        var how = Checked(mm, style ?? LengthStyle.Millimetres());
        return how.Notation switch
        {
            LengthNotation.Millimetres => Rounding.Fixed(mm, how.Decimals) + " mm",
            LengthNotation.DecimalInches => Rounding.Fixed(mm / Inch.Mm, how.Decimals) + " in",
            _ => Fraction(mm / Inch.Mm, how),
        };
    }

    /// <summary>
    /// Value ± standard uncertainty in one decimal unit, the ± to two significant digits and the value to the same place
    /// (JCGM 100, 7.2.6). Fractions are written as decimal inches: a fraction cannot carry a ±.
    /// A ± of nought, of an exact value, is left out.
    /// </summary>
    /// <param name="mm">Value and standard uncertainty, mm.</param>
    public static string Write(Uncertain mm, LengthStyle? style = null)
    {
        var how = Checked(mm.Value, style ?? LengthStyle.Millimetres());
        if (!double.IsFinite(mm.Std) || mm.Std < 0)
            throw new RefusedException(Refusal.Of("±", mm.Std.ToString(CultureInfo.InvariantCulture), "a ± is finite and not negative"));
        if (mm.Std == 0) return Write(mm.Value, how);
        var (scale, unit) = how.Notation == LengthNotation.Millimetres ? (1.0, "mm") : (Inch.Mm, "in");
        var (value, std) = Rounding.Together(mm.Value / scale, mm.Std / scale);
        return $"{value} ± {std} {unit}";
    }

    static LengthStyle Checked(double mm, LengthStyle style)
    {
        if (!double.IsFinite(mm) || Math.Abs(mm) > Lengths.Longest)
            throw new RefusedException(Refusal.Of("length", mm.ToString(CultureInfo.InvariantCulture), "a length is finite and at most 1000 m"));
        if (style.Decimals is < 0 or > 6)
            throw new RefusedException(Refusal.Of("decimals", style.Decimals.ToString(CultureInfo.InvariantCulture), "write 0 to 6 decimals"));
        if (style.Denominator is < 1 or > 128 || !int.IsPow2(style.Denominator))
            throw new RefusedException(Refusal.Of("denominator", style.Denominator.ToString(CultureInfo.InvariantCulture), "the finest fraction is 1/1, 1/2, 1/4 ... 1/128"));
        return style;
    }

    static string Fraction(double inches, LengthStyle style)
    {
        var size = Math.Abs(inches);
        var parts = (long)Math.Round(size * style.Denominator, MidpointRounding.AwayFromZero);
        var residue = size - (double)parts / style.Denominator;
        var left = Rounding.Fixed(Math.Abs(residue), style.Decimals);
        var exact = left.All(c => c is '0' or '.');
        var sign = inches < 0 && !(exact && parts == 0) ? "-" : "";
        var fraction = $"{sign}{Inch.Fraction(parts, style.Denominator)}\"";
        return exact ? fraction : $"{fraction} {(residue < 0 ? "-" : "+")} {left}\"";
    }
}
