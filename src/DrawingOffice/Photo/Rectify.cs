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
            for (var k = 0; k < n; k++) Sample(raster, here.X + k * step.X - 0.5, here.Y + k * step.Y - 0.5, into.Slice((i + k) * raster.Channels, raster.Channels));
            here = next;
        }
    }

    static void Sample(Raster raster, double u, double v, Span<byte> into)
    {
        var (w, h, channels, pixels) = (raster.Width, raster.Height, raster.Channels, raster.Pixels);
        if (!(u >= -0.5 && v >= -0.5 && u <= w - 0.5 && v <= h - 0.5))
        {
            into.Fill(255);
            return;
        }
        var (x, y) = (Math.Clamp((int)(u * 256 + 256) - 256, 0, (w - 1) * 256), Math.Clamp((int)(v * 256 + 256) - 256, 0, (h - 1) * 256));
        var (i, j, a, b) = (x >> 8, y >> 8, x & 255, y & 255);
        var at = (j * w + i) * channels;
        var (right, down) = (i + 1 < w ? channels : 0, j + 1 < h ? w * channels : 0);
        var (p, q, r, s) = ((256 - a) * (256 - b), a * (256 - b), (256 - a) * b, a * b);
        for (var c = 0; c < into.Length; c++, at++)
            into[c] = (byte)((p * pixels[at] + q * pixels[at + right] + r * pixels[at + down] + s * pixels[at + down + right] + 32768) >> 16);
    }

    static string Figure(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);
}
