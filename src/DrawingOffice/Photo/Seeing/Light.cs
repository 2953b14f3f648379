using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Seeing;

/// <summary>
/// How light each pixel is, 0 to 1, in proportion to the light itself: eight-bit figures are turned back by the curve of IEC 61966-2-1 (sRGB),
/// colours weighed as ITU-R BT.709. Edges are found in this light, because blur mixes light, not figures: on the figures as they
/// stand, half-way between black and white lies most of a pixel off a blurred edge.
/// </summary>
public sealed class Light
{
    static readonly float[] s_curve = [.. Enumerable.Range(0, 256).Select(v => (float)Linear(v / 255.0))];
    readonly float[] _values;

    Light(int width, int height, float[] values) => (Width, Height, _values) = (width, height, values);

    public int Width { get; }

    public int Height { get; }

    /// <summary>Rows from the top.</summary>
    public ReadOnlySpan<float> Values => _values;

    public static Light Of(Raster raster)
    {
        var values = new float[raster.Width * raster.Height];
        var pixels = raster.Pixels;
        if (raster.Channels == 1)
            for (var i = 0; i < values.Length; i++) values[i] = s_curve[pixels[i]];
        else
            for (int i = 0, p = 0; i < values.Length; i++, p += raster.Channels)
                values[i] = 0.2126f * s_curve[pixels[p]] + 0.7152f * s_curve[pixels[p + 1]] + 0.0722f * s_curve[pixels[p + 2]];
        return new(raster.Width, raster.Height, values);
    }

    /// <summary>Light at a place (px), between the four nearest pixels in proportion; the picture's rim goes on outside it.</summary>
    public double At(double x, double y)
    {
        var (u, v) = (Math.Clamp(x - 0.5, 0, Width - 1.0), Math.Clamp(y - 0.5, 0, Height - 1.0));
        var (i, j) = (Math.Min((int)u, Width - 2), Math.Min((int)v, Height - 2));
        var (a, b) = (u - i, v - j);
        var k = j * Width + i;
        return (1 - b) * ((1 - a) * _values[k] + a * _values[k + 1]) + b * ((1 - a) * _values[k + Width] + a * _values[k + Width + 1]);
    }

    public double At(Vec2 px) => At(px.X, px.Y);

    public bool Holds(Vec2 px, double margin = 0) => px.X >= margin && px.Y >= margin && px.X <= Width - margin && px.Y <= Height - margin;

    /// <summary>The mean of squares of <paramref name="by"/> pixels a side; by 1 gives the same again.</summary>
    public Light Smaller(int by)
    {
        if (by <= 1) return this;
        var (w, h) = (Width / by, Height / by);
        var values = new float[w * h];
        var share = 1f / (by * by);
        for (var j = 0; j < h; j++)
            for (var i = 0; i < w; i++)
            {
                float sum = 0;
                for (var b = 0; b < by; b++)
                    for (int a = 0, k = (j * by + b) * Width + i * by; a < by; a++, k++) sum += _values[k];
                values[j * w + i] = sum * share;
            }
        return new(w, h, values);
    }

    static double Linear(double v) => v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4);
}
