using System.Globalization;
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

/// <summary>Resamples a photograph to scale, between the four nearest pixels in proportion; what the photograph does not show is white.</summary>
/// <remarks>
/// For looking and tracing by eye: edges and holes are found in the photograph itself, so no resampling lies between the light and a reading.
/// Along a row the lens's bend and the slant change slowly, so places are reckoned every <see cref="Span"/> pixels and between them
/// by the straight line; on the strongest lens and slant taken this errs by less than 0.05 px (tested).
/// </remarks>
public static class Rectify
{
    /// <summary>Pixels of the result.</summary>
    const double Most = 12_000_000;

    const int Span = 8;

    /// <param name="low">Bottom left of what is wanted, mm on the face.</param>
    /// <param name="high">Top right, mm.</param>
    /// <param name="pixelsPerMm">Null takes the photograph's own at its middle, as far as 12 million pixels allow.</param>
    /// <param name="progress">0 to 1.</param>
    public static Parsed<TruePicture> Of(TruePhoto photo, Raster raster, Vec2 low, Vec2 high, double? pixelsPerMm = null, IProgress<double>? progress = null, CancellationToken stop = default)
    {
        var (wide, tall) = (high.X - low.X, high.Y - low.Y);
        if (!(wide > 0 && tall > 0 && wide < 5000 && tall < 5000)) return Refusal.Of("area", $"{Figure(wide)} x {Figure(tall)} mm", "a width and a height above 0 and below 5000 mm");
        var scale = pixelsPerMm ?? Math.Min(photo.Camera.PixelsPerMm((low + high) / 2), Math.Sqrt(Most / (wide * tall)) * 0.999);
        var (width, height) = (Math.Max(1, (long)Math.Round(wide * scale)), Math.Max(1, (long)Math.Round(tall * scale)));
        if (!(scale > 0) || width * height > Raster.Most) return Refusal.Of("scale", $"{Figure(scale)} pixels in a millimetre", "above 0, and the whole picture at most 40 million pixels");
        var corner = new Vec2(low.X, high.Y);
        var pixels = new byte[width * height * raster.Channels];
        for (var j = 0; j < height; j++)
        {
            stop.ThrowIfCancellationRequested();
            Row(photo, raster, corner, scale, j, pixels.AsSpan((int)(j * width * raster.Channels), (int)width * raster.Channels));
            if (j % 64 == 0) progress?.Report((double)j / height);
        }
        progress?.Report(1);
        return new TruePicture(new Raster((int)width, (int)height, raster.Channels, pixels), scale, corner);
    }

    /// <summary>The area over the whole frame of the target, or over the picked corners, mm on the sheet.</summary>
    public static (Vec2 Low, Vec2 High) Frame(TruePhoto photo) =>
        (new(photo.Hull.Min(p => p.X), photo.Hull.Min(p => p.Y)), new(photo.Hull.Max(p => p.X), photo.Hull.Max(p => p.Y)));

    static void Row(TruePhoto photo, Raster raster, Vec2 corner, double scale, int row, Span<byte> into)
    {
        var (width, y, face) = (into.Length / raster.Channels, corner.Y - (row + 0.5) / scale, photo.Face);
        Vec2 At(int i) => photo.Camera.ToPhoto(face.Lower(new(corner.X + (i + 0.5) / scale, y)));
        var here = At(0);
        for (var i = 0; i < width; i += Span)
        {
            var n = Math.Min(Span, width - i);
            var next = At(i + Span);
            var step = (next - here) / Span;
            Stretch(raster, here - new Vec2(0.5, 0.5), step, into.Slice(i * raster.Channels, n * raster.Channels));
            here = next;
        }
    }

    /// <summary>
    /// Pixels along a straight stretch of the photograph, beginning at <paramref name="from"/> (the first pixel's middle being 0, 0). Shares of the four
    /// neighbours in 256ths: whole numbers, and no step of light is wrong by more than rounding.
    /// </summary>
    static void Stretch(Raster raster, Vec2 from, Vec2 step, Span<byte> into)
    {
        var (w, h, channels) = (raster.Width, raster.Height, raster.Channels);
        ReadOnlySpan<byte> pixels = raster.Pixels;
        var last = from + step * (into.Length / channels);
        var whole = Math.Min(from.X, last.X) >= 0 && Math.Min(from.Y, last.Y) >= 0 && Math.Max(from.X, last.X) < w - 1 && Math.Max(from.Y, last.Y) < h - 1;
        for (var (o, u, v) = (0, from.X, from.Y); o < into.Length; o += channels, u += step.X, v += step.Y)
        {
            if (!whole && !(u >= -0.5 && v >= -0.5 && u <= w - 0.5 && v <= h - 0.5))
            {
                into.Slice(o, channels).Fill(255);
                continue;
            }
            var (x, y) = ((int)(u * 256), (int)(v * 256));
            if (!whole) (x, y) = (Math.Clamp(x, 0, ((w - 1) << 8) - 1), Math.Clamp(y, 0, ((h - 1) << 8) - 1));
            var (a, b) = (x & 255, y & 255);
            var (q, r, s) = (a * (256 - b), (256 - a) * b, a * b);
            var p = 65536 - q - r - s;
            var upper = pixels.Slice(((y >> 8) * w + (x >> 8)) * channels, 2 * channels);
            var lower = pixels.Slice((((y >> 8) + 1) * w + (x >> 8)) * channels, 2 * channels);
            for (var c = 0; c < channels; c++)
                into[o + c] = (byte)((p * upper[c] + q * upper[c + channels] + r * lower[c] + s * lower[c + channels] + 32768) >> 16);
        }
    }

    static string Figure(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
