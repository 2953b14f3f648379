using System.Buffers.Binary;
using System.IO.Compression;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.FrontOffice.MeasurePhoto.Files.Png;

/// <summary>Pixels to a PNG that carries its own scale, so that it prints true to size.</summary>
static class PngWriter
{
    const double MmInMetre = 1000;

    /// <param name="perMm">Pixels per mm, written as whole pixels per metre (pHYs).</param>
    public static byte[] Write(Raster pixels, double perMm)
    {
        var head = new byte[13];
        BinaryPrimitives.WriteInt32BigEndian(head, pixels.Width);
        BinaryPrimitives.WriteInt32BigEndian(head.AsSpan(4), pixels.Height);
        (head[8], head[9]) = (8, (byte)(pixels.Channels == 1 ? 0 : 2));
        var scale = new byte[9];
        BinaryPrimitives.WriteInt32BigEndian(scale, (int)Math.Round(perMm * MmInMetre));
        BinaryPrimitives.WriteInt32BigEndian(scale.AsSpan(4), (int)Math.Round(perMm * MmInMetre));
        scale[8] = 1;
        return [.. PngPart.Signature, .. PngPart.Make("IHDR"u8, head), .. PngPart.Make("pHYs"u8, scale), .. PngPart.Make("IDAT"u8, Packed(pixels)), .. PngPart.Make("IEND"u8, [])];
    }

    /// <summary>Each row less the one above it: a photograph then packs to about half.</summary>
    static byte[] Packed(Raster pixels)
    {
        using var to = new MemoryStream();
        using (var packer = new ZLibStream(to, CompressionLevel.Fastest, leaveOpen: true))
        {
            var (stride, bytes) = (pixels.Width * pixels.Channels, pixels.Pixels);
            var row = new byte[stride + 1];
            row[0] = PngFilter.Up;
            for (var y = 0; y < pixels.Height; y++)
            {
                var at = y * stride;
                for (var i = 0; i < stride; i++) row[i + 1] = (byte)(bytes[at + i] - (y > 0 ? bytes[at + i - stride] : 0));
                packer.Write(row);
            }
        }
        return to.ToArray();
    }
}
