using System.Globalization;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Cameras;

/// <summary>Whence the focal length is known, best first.</summary>
public enum FocalFrom { Marks, Stated, Guessed }

/// <summary>Where the camera stood over the sheet.</summary>
/// <param name="Foot">The place of the sheet straight below the lens, mm.</param>
/// <param name="Above">Height of the lens above the sheet, mm.</param>
/// <param name="Tilt">Between the line of sight and straight down, radians.</param>
/// <param name="Focal">px.</param>
public sealed record Stand(Vec2 Foot, Uncertain Above, double Tilt, Uncertain Focal, FocalFrom From)
{
    /// <summary>As in <c>322.3 ± 0.3 mm</c>; a ± is never said to be less than the tenth that is written.</summary>
    public string AboveWords => Above.Expanded < 1
        ? string.Create(CultureInfo.InvariantCulture, $"{Above.Value:0.0} ± {Math.Max(0.1, Above.Expanded):0.0} mm")
        : string.Create(CultureInfo.InvariantCulture, $"{Above.Value:0} ± {Above.Expanded:0} mm");
}

/// <summary>
/// A flat face that lies higher than the sheet. Seen from the lens it covers the sheet enlarged about the foot by above / (above − height):
/// one similarity for the whole face, so a wrong height is a wrong scale and nothing else.
/// </summary>
/// <param name="Share">Height of the face over height of the lens.</param>
/// <param name="ScaleStd">Standard ± of the scale that the two heights leave.</param>
public readonly record struct FaceAbove(Vec2 Foot, double Share, double ScaleStd)
{
    /// <summary>From the place on the sheet that it covers to the place on the face, mm.</summary>
    public Vec2 Raise(Vec2 sheet) => Foot + (sheet - Foot) * (1 - Share);

    /// <summary>The other way.</summary>
    public Vec2 Lower(Vec2 face) => Foot + (face - Foot) / (1 - Share);

    /// <summary>mm: a face whose height is not said may lie anywhere from the sheet to this, as sheet metal and light plate do (common practice).</summary>
    public const double MostUnsaid = 3;

    /// <summary>
    /// What is seen on the sheet itself when the stand is unknown. A height that is not said is taken for 0, and the scale's ± is the root mean
    /// square of all from there to <see cref="MostUnsaid"/>; twice that holds the largest.
    /// </summary>
    public static FaceAbove Of(Stand? stand, Uncertain? height)
    {
        if (stand is null) return default;
        if (height is not { } h) return new(stand.Foot, 0, MostUnsaid / Math.Sqrt(3) / stand.Above.Value);
        if (h.Value == 0 && h.Std == 0) return default;
        var share = h.Value / stand.Above.Value;
        var far = share * stand.Above.Std / stand.Above.Value;
        var own = h.Std / stand.Above.Value;
        return new(stand.Foot, share, Math.Sqrt(own * own + far * far));
    }
}
