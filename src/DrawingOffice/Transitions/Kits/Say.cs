using System.Globalization;
using WitnessMark.Maths.Units;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>Figures as they are written in lists and sentences.</summary>
static class Say
{
    public static string Mm(double mm, int decimals = 1) => LengthWriter.Write(mm, LengthStyle.Millimetres(decimals));

    public static string Degrees(double radians) => (radians * 180 / Math.PI).ToString("0.0", CultureInfo.InvariantCulture) + "°";
}
