using WitnessMark.DrawingOffice.Photo;
using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.FrontOffice.MeasurePhoto.Files;

/// <summary>Sets a stored picture upright.</summary>
static class Upright
{
    /// <param name="turn">1 to 8 as the Exif tag 0x0112 counts: where the first row and the first column of the stored picture belong.</param>
    public static Raster Of(Raster from, int turn)
    {
        if (turn == Exif.Upright) return from;
        var (w, h, channels, pixels) = (from.Width, from.Height, from.Channels, from.Pixels);
        var (width, height) = turn >= 5 ? (h, w) : (w, h);
        var to = new byte[pixels.Length];
        for (int y = 0, at = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                var (fromX, fromY) = turn switch
                {
                    2 => (w - 1 - x, y),
                    3 => (w - 1 - x, h - 1 - y),
                    4 => (x, h - 1 - y),
                    5 => (y, x),
                    6 => (y, h - 1 - x),
                    7 => (w - 1 - y, h - 1 - x),
                    _ => (w - 1 - y, x),
                };
                for (int c = 0, i = (fromY * w + fromX) * channels; c < channels; c++) to[at++] = pixels[i + c];
            }
        }
        return new(width, height, channels, to);
    }
}
