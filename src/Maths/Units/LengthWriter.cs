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

    /// <summary>Value ± twice its standard uncertainty, the half-width that a person is shown; else as <see cref="Write(Uncertain, LengthStyle?)"/>.</summary>
    public static string WriteExpanded(Uncertain mm, LengthStyle? style = null) => Write(mm with { Std = mm.Expanded }, style);

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

public enum LengthNotation { Millimetres, DecimalInches, FractionInches }

/// <summary>How a length is written out. The unit always stands behind it.</summary>
/// <param name="Decimals">Decimals of a decimal notation, 0 to 6; of a fraction's residue in inches.</param>
/// <param name="Denominator">Finest fraction: a power of two from 1 to 128.</param>
public sealed record LengthStyle(LengthNotation Notation, int Decimals, int Denominator = 64)
{
    /// <summary>84.14 mm.</summary>
    public static LengthStyle Millimetres(int decimals = 2) => new(LengthNotation.Millimetres, decimals);

    /// <summary>3.313 in.</summary>
    public static LengthStyle DecimalInches(int decimals = 4) => new(LengthNotation.DecimalInches, decimals);

    /// <summary>3 5/16" + 0.0042": the nearest fraction, and what is left over to 0.0001 in, which is not written where it is nought.</summary>
    public static LengthStyle FractionInches(int denominator = 64) => new(LengthNotation.FractionInches, 4, denominator);

    /// <summary>Half the last place, mm: how far the written length may be from the true one by rounding.</summary>
    public double Rounding => 0.5 * Math.Pow(10, -Decimals) * (Notation == LengthNotation.Millimetres ? 1 : Inch.Mm);
}
