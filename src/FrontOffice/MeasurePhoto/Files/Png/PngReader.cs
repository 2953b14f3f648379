using System.IO.Compression;
using WitnessMark.DrawingOffice.Photo;
using WitnessMark.Maths;
using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.FrontOffice.MeasurePhoto.Files.Png;

/// <summary>PNG (ISO/IEC 15948) to pixels: every colour type, bit depth and interlace; what is see-through is laid on white paper.</summary>
static class PngReader
{
    /// <summary>Where the seven passes of an interlaced picture begin and how far they step: x, y, right, down (ISO/IEC 15948, 8.2).</summary>
    static readonly (int X, int Y, int Right, int Down)[] Passes = [(0, 0, 8, 8), (4, 0, 8, 8), (0, 4, 4, 8), (2, 0, 4, 4), (0, 2, 2, 4), (1, 0, 2, 2), (0, 1, 1, 2)];

    static readonly (int X, int Y, int Right, int Down)[] OnePass = [(0, 0, 1, 1)];

    public static Parsed<Raster> Read(byte[] file, PictureHead head)
    {
        var parts = PngPart.Of(file);
        var first = parts[0].Body(file);
        if (PngLayout.Of(first[8], first[9], parts, file) is not { } layout || first[12] > 1) return Broken("its first part names no kind of PNG");
        var to = new byte[head.Width * head.Height * layout.Channels];
        using var packed = new MemoryStream();
        foreach (var part in parts.Where(p => p.Name == "IDAT")) packed.Write(part.Body(file));
        packed.Position = 0;
        try
        {
            using var data = new ZLibStream(packed, CompressionMode.Decompress);
            foreach (var pass in first[12] == 1 ? Passes : OnePass)
            {
                int columns = (head.Width - pass.X + pass.Right - 1) / pass.Right, rows = (head.Height - pass.Y + pass.Down - 1) / pass.Down;
                if (columns <= 0 || rows <= 0) continue;
                byte[] above = new byte[layout.RowBytes(columns)], row = new byte[above.Length];
                for (var r = 0; r < rows; r++)
                {
                    var filter = data.ReadByte();
                    data.ReadExactly(row);
                    if (filter is < 0 or > 4) return Broken("its rows are damaged");
                    PngFilter.Undo(filter, row, above, layout.Step);
                    for (var c = 0; c < columns; c++) layout.Put(row, c, to, ((pass.Y + r * pass.Down) * head.Width + pass.X + c * pass.Right) * layout.Channels);
                    (above, row) = (row, above);
                }
            }
        }
        catch (Exception e) when (e is InvalidDataException or EndOfStreamException)
        {
            return Broken("its packed data are damaged or cut short");
        }
        return new Raster(head.Width, head.Height, layout.Channels, to);
    }

    static Refusal Broken(string how) => Refusal.Of("picture", "a PNG", $"{how}; copy it again");
}
