using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.Web.Client.Shell.Settings;

public enum LengthsIn { Millimetres, DecimalInches, FractionInches, Both }

/// <summary>
/// Lengths as the pages show them. There is one person at one page, so the wish stands here once and every table reads it; what is
/// typed is always understood as it is written, and what is kept is mm.
/// </summary>
public static class LengthsShown
{
    /// <summary>Inches need a decimal and a half more than mm for the same fineness; one more is written.</summary>
    const int MoreDecimals = 1;

    /// <summary>Set by <see cref="Preferences"/> alone.</summary>
    public static LengthsIn As { get; internal set; }

    /// <summary>With its unit: <c>84.14 mm</c>, <c>3.313 in</c>, <c>3 5/16"</c>, <c>84.14 mm (3.313 in)</c>.</summary>
    public static string Write(double mm, int decimals = 2) => As switch
    {
        LengthsIn.Millimetres => Millimetres(mm, decimals) + " mm",
        LengthsIn.DecimalInches => Inches(mm, decimals),
        LengthsIn.FractionInches => Fraction(mm),
        _ => $"{Millimetres(mm, decimals)} mm ({Inches(mm, decimals)})",
    };

    /// <summary>The same without "mm", for columns that are known to be mm; inches always say so.</summary>
    public static string Bare(double mm, int decimals) => As == LengthsIn.Millimetres ? Millimetres(mm, decimals) : Write(mm, decimals);

    /// <summary>A difference, with its sign.</summary>
    public static string Signed(double mm) => As is LengthsIn.Millimetres or LengthsIn.Both
        ? mm.ToString("+0.000;−0.000;0.000", CultureInfo.InvariantCulture) : (mm / Inch.Mm).ToString("+0.0000 in;−0.0000 in;0.0000 in", CultureInfo.InvariantCulture);

    /// <summary>± with its unit, to two figures (JCGM 100, 7.2.6); a fraction cannot carry one, so it is in decimal inches.</summary>
    /// <param name="half">The half-width that is shown, mm.</param>
    public static string PlusMinus(double half) => As switch
    {
        LengthsIn.Millimetres => $"± {TwoFigures(half, 3)} mm",
        LengthsIn.Both => $"± {TwoFigures(half, 3)} mm ({TwoFigures(half / Inch.Mm, 4)} in)",
        _ => $"± {TwoFigures(half / Inch.Mm, 4)} in",
    };

    /// <summary>Value and expanded ± together, rounded to the same place.</summary>
    public static string Expanded(Uncertain mm) => As switch
    {
        LengthsIn.Millimetres => LengthWriter.WriteExpanded(mm),
        LengthsIn.Both => $"{LengthWriter.WriteExpanded(mm)} ({LengthWriter.WriteExpanded(mm, LengthStyle.DecimalInches())})",
        _ => LengthWriter.WriteExpanded(mm, LengthStyle.DecimalInches()),
    };

    /// <summary>Two significant figures, never finer than so many decimals.</summary>
    public static string TwoFigures(double value, int finest)
    {
        if (!double.IsFinite(value)) return "?";
        var decimals = value <= 0 ? finest : Math.Clamp(1 - (int)Math.Floor(Math.Log10(value)), 0, finest);
        return value.ToString($"F{decimals}", CultureInfo.InvariantCulture);
    }

    static string Millimetres(double mm, int decimals) => mm.ToString($"F{decimals}", CultureInfo.InvariantCulture);

    static string Inches(double mm, int decimals) => LengthWriter.Write(mm, LengthStyle.DecimalInches(decimals + MoreDecimals));

    /// <summary>The nearest 64th; "about" when more than a thousandth of an inch is left over.</summary>
    static string Fraction(double mm) => LengthWriter.Write(mm, LengthStyle.FractionInches() with { Decimals = 3 });
}
