using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo;

/// <summary>A picture true to scale: a millimetre of the face is the same number of pixels everywhere.</summary>
/// <param name="PixelsPerMm">px per mm.</param>
/// <param name="Corner">The place of the picture's top left corner on the face, mm; y falls downward in the picture.</param>
public sealed record TruePicture(Raster Raster, double PixelsPerMm, Vec2 Corner)
{
    public Vec2 ToFace(Vec2 px) => new(Corner.X + px.X / PixelsPerMm, Corner.Y - px.Y / PixelsPerMm);

    public Vec2 ToPicture(Vec2 mm) => new((mm.X - Corner.X) * PixelsPerMm, (Corner.Y - mm.Y) * PixelsPerMm);
}

/// <summary>Resamples a photograph to scale.</summary>
public static class Rectify
{
    /// <param name="low">Bottom left of what is wanted, mm.</param>
    /// <param name="high">Top right, mm.</param>
    /// <param name="pixelsPerMm">Null takes the photograph's own finest, as far as 12 million pixels allow.</param>
    public static Parsed<TruePicture> Of(TruePhoto photo, Raster raster, Vec2 low, Vec2 high, double? pixelsPerMm = null, IProgress<double>? progress = null, CancellationToken stop = default) =>
        Refusal.Of("scale", $"{pixelsPerMm}", "pixels in a millimetre");
}
