using System.Globalization;

namespace WitnessMark.DrawingOffice.Drafting;

/// <summary>How numbers are written on a drawing. The shop chooses mm, decimal inch or fractions; the drawing only asks.</summary>
/// <param name="Length">A length in mm with its standard uncertainty in mm (null when not known), without a unit mark.</param>
/// <param name="Spread">A ± in mm, without the sign.</param>
/// <param name="Units">As the title block names them, e.g. <c>mm</c>.</param>
public sealed record Writing(Func<double, double?, string> Length, Func<double, string> Spread, string Units)
{
    /// <summary>Millimetres: to 0.01 where nothing is known of the ±, else to the ±'s own first digit.</summary>
    public static Writing Millimetres { get; } = new(
        (mm, std) => std is { } s ? Fixed(mm, Decimals(s)) : Tidy(mm, "0.##"),
        mm => Fixed(mm, Decimals(mm / 2) + 1),
        "mm");

    /// <summary>Degrees to a tenth.</summary>
    /// <param name="radians">Any.</param>
    public static string Angle(double radians) => Tidy(radians * 180 / Math.PI, "0.#") + "°";

    /// <summary>Decimals that show the first digit of twice the standard uncertainty; at most 3.</summary>
    static int Decimals(double std) => std > 0 ? (int)Math.Clamp(Math.Ceiling(-Math.Log10(2 * std)), 0, 3) : 3;

    static string Fixed(double value, int decimals) => Tidy(value, "0." + new string('0', decimals));

    static string Tidy(double value, string format) =>
        value.ToString(format, CultureInfo.InvariantCulture) is var text && double.Parse(text, CultureInfo.InvariantCulture) == 0
            ? text.TrimStart('-')
            : text;
}
