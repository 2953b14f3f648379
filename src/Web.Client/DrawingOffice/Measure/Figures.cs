using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.Web.Client.DrawingOffice.Measure;

/// <summary>Figures as the measuring page shows them: mm and degrees, the ± for 19 of 20 (coverage factor 2; JCGM 100, 6.3.3).</summary>
public static class Figures
{
    const double Degree = Math.PI / 180;

    public static string Signed(double value, ReadingKind kind) =>
        IsAngle(kind) ? $"{value / Degree:+0.00°;−0.00°;0.00°}" : $"{value:+0.000;−0.000;0.000}";

    /// <summary>Two standard uncertainties, to two figures.</summary>
    public static string Half(double std, ReadingKind kind) => IsAngle(kind) ? $"{TwoFigures(2 * std / Degree)}°" : TwoFigures(2 * std);

    public static string Value(double value, ReadingKind kind) => IsAngle(kind) ? $"{value / Degree:0.00}°" : $"{value:0.00} mm";

    public static string PlusMinus(double std) => $"± {TwoFigures(2 * std)} mm";

    /// <summary>Rounded to two significant figures (JCGM 100, 7.2.6), never finer than 0.001.</summary>
    static string TwoFigures(double value) => value switch
    {
        _ when !double.IsFinite(value) => "?",
        >= 10 => $"{value:0}",
        >= 1 => $"{value:0.0}",
        >= 0.1 => $"{value:0.00}",
        _ => $"{value:0.000}",
    };

    static bool IsAngle(ReadingKind kind) => kind is ReadingKind.AngleBetweenEdges or ReadingKind.Parallel or ReadingKind.Square;
}
