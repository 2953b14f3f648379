using System.Globalization;

namespace WitnessMark.DrawingOffice.Drafting;

/// <summary>How numbers are written on a drawing. The shop chooses mm, decimal inch or fractions; the drawing only asks.</summary>
/// <param name="Length">A length in mm with its standard uncertainty in mm (null when not known), without a unit mark.</param>
/// <param name="Spread">A ± in mm, without the sign.</param>
/// <param name="Units">As the title block names them, e.g. <c>mm</c>.</param>
public sealed record Writing(Func<double, double?, string> Length, Func<double, string> Spread, string Units)
{
    /// <summary>Millimetres: to 0.01 where nothing is known of the ±, else to the last digit of the ±.</summary>
    public static Writing Millimetres { get; } = Decimal(1, "0.##", 3, "mm");

    /// <summary>Decimal inches: to 0.001 where nothing is known of the ±, else to the last digit of the ±.</summary>
    public static Writing Inches { get; } = Decimal(25.4, "0.###", 5, "in");

    static Writing Decimal(double unit, string bare, int most, string name) => new(
        (mm, std) => std is { } s ? Fixed(mm / unit, Decimals(2 * s / unit, most)) : Tidy(mm / unit, bare),
        mm => Fixed(mm / unit, Decimals(mm / unit, most)),
        name);

    /// <summary>Degrees to a tenth.</summary>
    /// <param name="radians">Any.</param>
    public static string Angle(double radians) => Tidy(radians * 180 / Math.PI, "0.#") + "°";

    /// <summary>Decimals that show a ± (two standard uncertainties) to one digit, to two when the first is a 1 (JCGM 100, 7.2.6: two at most).</summary>
    static int Decimals(double spread, int most)
    {
        if (!(spread > 0)) return most;
        var power = (int)Math.Floor(Math.Log10(spread));
        var digits = spread / Math.Pow(10, power) < 1.95 ? 2 : 1;
        return Math.Clamp(digits - 1 - power, 0, most);
    }

    static string Fixed(double value, int decimals) => Tidy(value, "0." + new string('0', decimals));

    static string Tidy(double value, string format) =>
        value.ToString(format, CultureInfo.InvariantCulture) is var text && double.Parse(text, CultureInfo.InvariantCulture) == 0
            ? text.TrimStart('-')
            : text;
}
