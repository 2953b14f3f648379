using System.Runtime.CompilerServices;
using JpegLibrary;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.Maths;
using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.FrontOffice.MeasurePhoto.Files;

/// <summary>JPEG to pixels by a managed library (docs/decisions/picture-files-managed.md); here only what the picture's colours mean.</summary>
static class JpegReader
{
    /// <param name="head">As read from the same file.</param>
    public static Parsed<Raster> Read(byte[] file, PictureHead head)
    {
        var decoder = new JpegDecoder();
        try
        {
            decoder.SetInput(file);
            decoder.Identify();
            var channels = decoder.NumberOfComponents;
            if (channels is not (1 or 3) || decoder.Precision != 8)
                return Refusal.Of("picture", $"a JPEG of {channels} colours and {decoder.Precision} bits", "only grey or colour pictures of 8 bits, as cameras make them, are read");
            // Never more than was checked: the library reads the size anew.
            if (decoder.Width != head.Width || decoder.Height != head.Height) return Broken("its two sizes differ");
            var bytes = new byte[head.Width * head.Height * channels];
            decoder.SetOutputWriter(new Blocks(head.Width, head.Height, channels, bytes));
            decoder.Decode();
            if (channels == 3 && !IsRgb(file)) ToRgb(bytes);
            return new Raster(head.Width, head.Height, channels, bytes);
        }
        catch (Exception e) when (e is InvalidDataException or InvalidOperationException or IndexOutOfRangeException or ArgumentException or NotSupportedException or OverflowException)
        {
            return Broken("its coded data are damaged");
        }
    }

    static Refusal Broken(string how) => Refusal.Of("picture", "a JPEG", $"{how}; copy it from the phone or camera again");

    /// <summary>Adobe's part APP14 tells by its last byte whether three colours were transformed; 0: they were not.</summary>
    static bool IsRgb(ReadOnlySpan<byte> file)
    {
        foreach (var part in JpegPart.Of(file))
            if (part.Marker == 0xEE && part.Body(file) is { Length: >= 12 } body && body.StartsWith("Adobe"u8)) return body[11] == 0;
        return false;
    }

    /// <summary>Full-range YCbCr to RGB in place (ITU-T T.871, 7): R = Y + 1.402 Cr, G = Y − 0.344136 Cb − 0.714136 Cr, B = Y + 1.772 Cb, in 1/65536.</summary>
    static void ToRgb(byte[] bytes)
    {
        const int half = 1 << 15;
        for (var i = 0; i + 2 < bytes.Length; i += 3)
        {
            int y = (bytes[i] << 16) + half, cb = bytes[i + 1] - 128, cr = bytes[i + 2] - 128;
            bytes[i] = Clamped((y + 91881 * cr) >> 16);
            bytes[i + 1] = Clamped((y - 22554 * cb - 46802 * cr) >> 16);
            bytes[i + 2] = Clamped((y + 116130 * cb) >> 16);
        }
    }

    static byte Clamped(int value) => (byte)Math.Clamp(value, 0, 255);

    /// <summary>Takes the decoder's blocks of 8 × 8 samples; those that hang over the edge are cut.</summary>
    sealed class Blocks(int width, int height, int channels, byte[] bytes) : JpegBlockOutputWriter
    {
        public override void WriteBlock(ref short block, int component, int x, int y)
        {
            if (component >= channels) return;
            int right = Math.Min(8, width - x), below = Math.Min(8, height - y);
            for (var row = 0; row < below; row++)
            {
                var to = ((y + row) * width + x) * channels + component;
                for (var column = 0; column < right; column++, to += channels) bytes[to] = Clamped(Unsafe.Add(ref block, row * 8 + column));
            }
        }
    }
}
