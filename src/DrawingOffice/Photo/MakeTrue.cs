using WitnessMark.DrawingOffice.Photo.Seeing;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo;

/// <summary>A photograph made true: the target found (or its corners taken as picked), the camera fitted, its stand and its cautions told.</summary>
public static class MakeTrue
{
    /// <summary>Refuses a picture that cannot be measured in, one without enough of the target, and corners that give no camera.</summary>
    /// <param name="progress">0 to 1.</param>
    public static Parsed<TruePhoto> Of(Raster raster, PhotoAsked asked, IProgress<double>? progress = null, CancellationToken stop = default)
    {
        if (raster.Refused() is { } refused) return refused;
        var light = Light.Of(raster);
        return Refusal.Of("picture", $"{light.Width} x {light.Height}", "a picture with the target sheet");
    }
}
