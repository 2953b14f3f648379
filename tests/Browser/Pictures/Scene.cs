using Microsoft.Playwright;
using SkiaSharp;

namespace WitnessMark.Browser.Pictures;

/// <summary>Pictures made up for the tests: a plate with holes on a bench, in rust or in paint.</summary>
static class Scene
{
    public static byte[] Heic => [0, 0, 0, 24, .. "ftypheic"u8, 0, 0, 0, 0, .. "mif1heic"u8, .. new byte[400]];

    public static FilePayload File(string name, byte[] bytes) => new() { Name = name, MimeType = name.EndsWith("jpg", StringComparison.Ordinal) ? "image/jpeg" : "image/heic", Buffer = bytes };

    /// <param name="painted">Done, not rusted.</param>
    public static byte[] Plate(bool painted, int holes = 3)
    {
        using var bitmap = new SKBitmap(1200, 900);
        using var canvas = new SKCanvas(bitmap);
        canvas.Clear(SKColor.Parse("#6d5b45"));
        for (var y = 0; y < 900; y += 60) canvas.DrawLine(0, y, 1200, y + 20, new SKPaint { Color = SKColor.Parse("#5c4c39"), StrokeWidth = 6 });
        canvas.DrawRoundRect(220, 200, 760, 480, 60, 60, new SKPaint { Color = SKColor.Parse(painted ? "#2d4f43" : "#8c4a26") });
        for (var i = 0; i < holes; i++) canvas.DrawCircle(340 + i * 520f / Math.Max(1, holes - 1), 440, 55, new SKPaint { Color = SKColor.Parse("#221a12") });
        canvas.Flush();
        using var data = bitmap.Encode(SKEncodedImageFormat.Jpeg, 88);
        return data!.ToArray();
    }
}
