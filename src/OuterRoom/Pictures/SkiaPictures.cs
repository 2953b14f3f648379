using SkiaSharp;
using WitnessMark.Maths;
using WitnessMark.Stores.Photographs;
using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.OuterRoom.Pictures;

/// <summary>
/// Smaller pictures by Skia: a JPEG or WebP is read at a fraction of its size, so that one of 40 million pixels takes a fraction of
/// a second and of the memory. Why not by managed code: docs/decisions/2026-11-26-small-pictures.md.
/// </summary>
public sealed class SkiaPictures : IPictureMaker
{
    /// <summary>JPEG quality: for a list small, for looking at without marks of the compression.</summary>
    const int ListQuality = 78, ViewQuality = 86, MarkedQuality = 92;

    /// <summary>Of the rim that sets a line off from whatever lies below it, against the line's own width.</summary>
    const double Rim = 2.1;

    const double UnitsWide = 1000;

    static readonly SKSamplingOptions Fine = new(SKFilterMode.Linear, SKMipmapMode.Linear);

    public IReadOnlyList<byte[]> Smaller(ReadOnlyMemory<byte> picture, IReadOnlyList<SmallSize> sizes)
    {
        using var whole = Upright(picture, (int)sizes.Max());
        return [.. sizes.Select(size =>
        {
            using var small = Sized(whole, (int)size);
            return Jpeg(small, size == SmallSize.List ? ListQuality : ViewQuality);
        })];
    }

    public byte[] Marked(ReadOnlyMemory<byte> picture, IReadOnlyList<PictureMark> marks, int longest)
    {
        using var whole = Upright(picture, longest);
        using var page = Sized(whole, longest);
        using var canvas = new SKCanvas(page);
        canvas.Scale((float)(page.Width / UnitsWide));
        using var paint = new SKPaint { IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeCap = SKStrokeCap.Round, StrokeJoin = SKStrokeJoin.Round };
        foreach (var mark in marks)
        {
            using var path = SKPath.ParseSvgPathData(mark.Path);
            if (path is null) continue;
            (paint.Color, paint.StrokeWidth) = (SKColors.White, (float)(mark.Width * Rim));
            canvas.DrawPath(path, paint);
            (paint.Color, paint.StrokeWidth) = (SKColor.Parse(mark.Colour), (float)mark.Width);
            canvas.DrawPath(path, paint);
        }
        canvas.Flush();
        return Jpeg(page, MarkedQuality);
    }

    /// <summary>No smaller than asked where the picture is not; what is see-through is laid on white paper, colours are brought to sRGB.</summary>
    static SKBitmap Upright(ReadOnlyMemory<byte> picture, int longest)
    {
        var head = PictureHead.Read(picture.Span).Value;
        using var data = SKData.CreateCopy(picture.Span);
        using var codec = SKCodec.Create(data) ?? throw Damaged(head);
        var size = codec.GetScaledDimensions(Math.Min(1, (float)longest / Math.Max(head.Width, head.Height)));
        // The fraction may fall just short of what is asked.
        if (Math.Max(size.Width, size.Height) < Math.Min(longest, Math.Max(head.Width, head.Height))) size = codec.Info.Size;
        using var srgb = SKColorSpace.CreateSrgb();
        using var read = new SKBitmap(new SKImageInfo(size.Width, size.Height, SKColorType.Rgba8888, SKAlphaType.Premul, srgb));
        if (codec.GetPixels(read.Info, read.GetPixels()) != SKCodecResult.Success) throw Damaged(head);
        var upright = new SKBitmap(new SKImageInfo(head.Lies ? size.Height : size.Width, head.Lies ? size.Width : size.Height, SKColorType.Rgba8888, SKAlphaType.Premul, srgb));
        using var canvas = new SKCanvas(upright);
        canvas.Clear(SKColors.White);
        canvas.SetMatrix(Turned(head.Turn, size.Width, size.Height));
        canvas.DrawBitmap(read, 0, 0, SKSamplingOptions.Default);
        canvas.Flush();
        return upright;
    }

    /// <summary>From the picture as stored to the picture upright; turns as the Exif tag 0x0112 counts them.</summary>
    static SKMatrix Turned(int turn, int w, int h) => turn switch
    {
        2 => new(-1, 0, w, 0, 1, 0, 0, 0, 1),
        3 => new(-1, 0, w, 0, -1, h, 0, 0, 1),
        4 => new(1, 0, 0, 0, -1, h, 0, 0, 1),
        5 => new(0, 1, 0, 1, 0, 0, 0, 0, 1),
        6 => new(0, -1, h, 1, 0, 0, 0, 0, 1),
        7 => new(0, -1, h, -1, 0, w, 0, 0, 1),
        8 => new(0, 1, 0, -1, 0, w, 0, 0, 1),
        _ => SKMatrix.Identity,
    };

    static SKBitmap Sized(SKBitmap from, int longest)
    {
        var scale = Math.Min(1, (double)longest / Math.Max(from.Width, from.Height));
        var to = from.Info.WithSize(Math.Max(1, (int)Math.Round(from.Width * scale)), Math.Max(1, (int)Math.Round(from.Height * scale)));
        return from.Resize(to, Fine) ?? throw new RefusedException(Refusal.Of("picture", $"{from.Width} by {from.Height} px", "there is no memory to make it smaller; close other programs"));
    }

    static byte[] Jpeg(SKBitmap bitmap, int quality)
    {
        using var pixels = bitmap.PeekPixels();
        using var data = pixels.Encode(new SKJpegEncoderOptions(quality, SKJpegEncoderDownsample.Downsample420, SKJpegEncoderAlphaOption.Ignore));
        return data?.ToArray() ?? throw new RefusedException(Refusal.Of("picture", $"{bitmap.Width} by {bitmap.Height} px", "it cannot be written as JPEG; keep to the original"));
    }

    static RefusedException Damaged(PictureHead head) =>
        new(Refusal.Of("picture", $"a {head.Format} of {head.Width} by {head.Height} px", "its coded data are damaged; copy it from the phone or camera again"));
}
