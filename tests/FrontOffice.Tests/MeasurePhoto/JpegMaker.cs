using System.Buffers;
using System.Buffers.Binary;
using JpegLibrary;
using WitnessMark.DrawingOffice.Photo;

namespace WitnessMark.Tests.FrontOffice.MeasurePhoto;

/// <summary>Grey JPEG files as a phone might write them, camera notes and all.</summary>
static class JpegMaker
{
    public static byte[] Write(Raster grey, int quality = 90, params ReadOnlySpan<byte[]> segments)
    {
        var encoder = new JpegEncoder();
        encoder.SetQuantizationTable(JpegStandardQuantizationTable.ScaleByQuality(JpegStandardQuantizationTable.GetLuminanceTable(JpegElementPrecision.Precision8Bit, 0), quality));
        encoder.SetHuffmanTable(true, 0);
        encoder.SetHuffmanTable(false, 0);
        encoder.AddComponent(1, 0, 0, 0, 1, 1);
        encoder.SetInputReader(new Pixels(grey));
        var plain = new ArrayBufferWriter<byte>();
        encoder.SetOutput(plain);
        encoder.Encode();
        using var file = new MemoryStream();
        file.Write(plain.WrittenSpan[..2]);
        foreach (var segment in segments) file.Write(segment);
        file.Write(plain.WrittenSpan[2..]);
        return file.ToArray();
    }

    /// <summary>A whole marker segment.</summary>
    public static byte[] Segment(byte marker, ReadOnlySpan<byte> body)
    {
        var segment = new byte[4 + body.Length];
        (segment[0], segment[1]) = (0xFF, marker);
        BinaryPrimitives.WriteUInt16BigEndian(segment.AsSpan(2), (ushort)(body.Length + 2));
        body.CopyTo(segment.AsSpan(4));
        return segment;
    }

    /// <summary>Camera notes (APP1): turn and focal length, and nothing private.</summary>
    public static byte[] Notes(int turn, int focal35)
    {
        byte[] tiff =
        [
            .. "MM\0*"u8, 0, 0, 0, 8,
            0, 2,
            0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)turn, 0, 0,
            0x87, 0x69, 0, 4, 0, 0, 0, 1, 0, 0, 0, 38,
            0, 0, 0, 0,
            0, 1,
            0xA4, 0x05, 0, 3, 0, 0, 0, 1, 0, (byte)focal35, 0, 0,
            0, 0, 0, 0,
        ];
        return Segment(0xE1, [.. "Exif\0\0"u8, .. tiff]);
    }

    sealed class Pixels(Raster grey) : JpegBlockInputReader
    {
        public override int Width => grey.Width;

        public override int Height => grey.Height;

        public override void ReadBlock(ref short block, int componentIndex, int x, int y)
        {
            for (var row = 0; row < 8; row++)
                for (var column = 0; column < 8; column++)
                {
                    // What hangs over the edge repeats it.
                    var at = Math.Min(y + row, grey.Height - 1) * grey.Width + Math.Min(x + column, grey.Width - 1);
                    System.Runtime.CompilerServices.Unsafe.Add(ref block, row * 8 + column) = grey.Pixels[at];
                }
        }
    }
}
