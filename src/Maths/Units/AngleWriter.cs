using System.Globalization;

namespace WitnessMark.Maths.Units;

public enum AngleStyle
{
    /// <summary>5.50°.</summary>
    DecimalDegrees,

    /// <summary>5° 30', to a whole minute.</summary>
    DegreesMinutes,
}

/// <summary>Writes angles so that <see cref="Angles.Read"/> reads them back to the last place written.</summary>
public static class AngleWriter
{
    /// <param name="radians">Finite, at most two turns either way.</param>
    /// <param name="decimals">Decimals of decimal degrees, 0 to 6.</param>
    public static string Write(double radians, AngleStyle style = AngleStyle.DecimalDegrees, int decimals = 2)
    {
        var degrees = Checked(radians, decimals);
        return style == AngleStyle.DecimalDegrees ? Rounding.Fixed(degrees, decimals) + "°" : Minutes(degrees);
    }

    /// <summary>Decimal degrees ± to two significant digits (JCGM 100, 7.2.6); a ± of nought is left out.</summary>
    /// <param name="radians">Value and standard uncertainty, radians.</param>
    public static string Write(Uncertain radians)
    {
        var degrees = Checked(radians.Value, 2);
        if (!double.IsFinite(radians.Std) || radians.Std < 0)
            throw new RefusedException(Refusal.Of("±", radians.Std.ToString(CultureInfo.InvariantCulture), "a ± is finite and not negative"));
        if (radians.Std == 0) return Write(radians.Value);
        var (value, std) = Rounding.Together(degrees, radians.Std * 180 / Math.PI);
        return $"{value} ± {std}°";
    }

    /// <summary>Value ± twice its standard uncertainty, the half-width that a person is shown.</summary>
    public static string WriteExpanded(Uncertain radians) => Write(radians with { Std = radians.Expanded });

    static double Checked(double radians, int decimals)
    {
        if (!double.IsFinite(radians) || Math.Abs(radians) > Angles.Largest * Math.PI / 180)
            throw new RefusedException(Refusal.Of("angle", radians.ToString(CultureInfo.InvariantCulture), "an angle is finite and at most two turns"));
        if (decimals is < 0 or > 6)
            throw new RefusedException(Refusal.Of("decimals", decimals.ToString(CultureInfo.InvariantCulture), "write 0 to 6 decimals"));
        return radians * 180 / Math.PI;
    }

    static string Minutes(double degrees)
    {
        var minutes = (long)Math.Round(Math.Abs(degrees) * 60, MidpointRounding.AwayFromZero);
        var sign = degrees < 0 && minutes > 0 ? "-" : "";
        return string.Create(CultureInfo.InvariantCulture, $"{sign}{minutes / 60}° {minutes % 60:00}'");
    }
}
