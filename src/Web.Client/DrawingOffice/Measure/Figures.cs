using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Web.Client.Shell.Settings;

namespace WitnessMark.Web.Client.DrawingOffice.Measure;

/// <summary>Figures as the measuring page shows them: lengths as the person wishes, degrees, the ± for 19 of 20 (coverage factor 2; JCGM 100, 6.3.3).</summary>
public static class Figures
{
    const double Degree = Math.PI / 180;

    public static string Signed(double value, ReadingKind kind) =>
        IsAngle(kind) ? $"{value / Degree:+0.00°;−0.00°;0.00°}" : LengthsShown.Signed(value);

    /// <summary>Two standard uncertainties with their sign, to two figures; of a length in mm without its unit.</summary>
    public static string Half(double std, ReadingKind kind) =>
        IsAngle(kind) ? $"± {LengthsShown.TwoFigures(2 * std / Degree, 3)}°"
        : LengthsShown.As == LengthsIn.Millimetres ? $"± {LengthsShown.TwoFigures(2 * std, 3)}" : PlusMinus(std);

    public static string Value(double value, ReadingKind kind) => IsAngle(kind) ? $"{value / Degree:0.00}°" : LengthsShown.Write(value);

    public static string PlusMinus(double std) => LengthsShown.PlusMinus(2 * std);

    static bool IsAngle(ReadingKind kind) => kind is ReadingKind.AngleBetweenEdges or ReadingKind.Parallel or ReadingKind.Square;
}
