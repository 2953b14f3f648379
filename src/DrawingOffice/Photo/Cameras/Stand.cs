using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Cameras;

/// <summary>Whence the focal length is known, best first.</summary>
public enum FocalFrom { Marks, Stated, Guessed }

/// <summary>Where the camera stood over the sheet.</summary>
/// <param name="Foot">The place of the sheet straight below the lens, mm.</param>
/// <param name="Above">Height of the lens above the sheet, mm.</param>
/// <param name="Tilt">Between the line of sight and straight down, radians.</param>
/// <param name="Focal">px.</param>
public sealed record Stand(Vec2 Foot, Uncertain Above, double Tilt, Uncertain Focal, FocalFrom From);

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

    /// <summary>What is seen on the sheet itself when the height or the stand is unknown.</summary>
    public static FaceAbove Of(Stand? stand, Uncertain? height)
    {
        if (stand is null || height is not { } h || (h.Value == 0 && h.Std == 0)) return default;
        var share = h.Value / stand.Above.Value;
        var far = share * stand.Above.Std / stand.Above.Value;
        var own = h.Std / stand.Above.Value;
        return new(stand.Foot, share, Math.Sqrt(own * own + far * far));
    }
}
