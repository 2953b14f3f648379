using System.Globalization;

namespace WitnessMark.PrintRoom;

/// <summary>Numbers as files want them: a decimal point, no exponent, no idle zeros.</summary>
static class Figures
{
    static readonly string[] s_formats = [.. Enumerable.Range(0, 10).Select(n => n == 0 ? "0" : "0." + new string('#', n))];

    public static string Of(double value, int decimals)
    {
        var text = value.ToString(s_formats[decimals], CultureInfo.InvariantCulture);
        return text == "-0" ? "0" : text;
    }
}
