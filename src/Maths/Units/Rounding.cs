using System.Globalization;

namespace WitnessMark.Maths.Units;

/// <summary>Rounding for the page.</summary>
static class Rounding
{
    /// <summary>Fixed decimals, never "-0.00".</summary>
    public static string Fixed(double value, int decimals)
    {
        var text = value.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text[0] == '-' && text.All(c => c is '-' or '0' or '.') ? text[1..] : text;
    }

    /// <summary>The ± to two significant digits, the value to the same place (JCGM 100, 7.2.6).</summary>
    /// <param name="std">Above 0.</param>
    public static (string Value, string Std) Together(double value, double std)
    {
        // Two digits are asked of the ± as rounded: 0.00996 is 0.010, not 0.0100.
        var twoDigits = double.Parse(std.ToString("E1", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        var decimals = 1 - (int)Math.Floor(Math.Log10(twoDigits) + 1e-9);
        if (decimals > 12) return (Fixed(value, 12), Fixed(std, 12));
        if (decimals >= 0) return (Fixed(value, decimals), Fixed(twoDigits, decimals));
        var place = Math.Pow(10, -decimals);
        return (Fixed(Math.Round(value / place) * place, 0), Fixed(twoDigits, 0));
    }
}
