using SkiaSharp;

namespace WitnessMark.OuterRoom.Tests.Pictures;

/// <summary>Pictures made up for the tests: four fields of colour, so that it is seen which way up they stand.</summary>
static class Shot
{
    public static byte[] Fields(int width, int height, SKEncodedImageFormat format, SKColorType pixels = SKColorType.Rgba8888)
    {
        using var bitmap = new SKBitmap(width, height, pixels, SKAlphaType.Opaque);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColors.White);
        foreach (var (x, y, colour) in new[] { (0, 0, SKColors.Red), (1, 0, SKColors.Lime), (0, 1, SKColors.Blue) })
        {
            using var paint = new SKPaint { Color = colour };
            canvas.DrawRect(x * width / 2f, y * height / 2f, width / 2f, height / 2f, paint);
        }
        canvas.Flush();
        using var data = bitmap.Encode(format, 95);
        return data!.ToArray();
    }

    /// <summary>A JPEG whose notes say how it is turned (TIFF 6.0, high byte first; Exif tag 0x0112).</summary>
    public static byte[] Turned(byte[] jpeg, int turn)
    {
        byte[] notes = [.. "Exif\0\0MM\0*"u8, 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)turn, 0, 0, 0, 0, 0, 0];
        return [.. jpeg[..2], 0xFF, 0xE1, 0, (byte)(notes.Length + 2), .. notes, .. jpeg[2..]];
    }
}
