using WitnessMark.Stores.Photographs.Files;

namespace WitnessMark.FrontOffice.MeasurePhoto.Files.Png;

/// <summary>How the samples of a PNG lie in its rows (ISO/IEC 15948, 11.2.2).</summary>
/// <param name="Bits">Of one sample: 1, 2, 4, 8 or 16.</param>
/// <param name="Samples">Of one pixel as stored.</param>
/// <param name="Palette">Red, green, blue for each index; empty where samples are brightnesses.</param>
/// <param name="Cover">How solid each index of the palette is; past its end wholly.</param>
sealed record PngLayout(int Bits, int Samples, bool Clear, byte[] Palette, byte[] Cover)
{
    bool Indexed => Palette.Length > 0;

    /// <summary>Of the pixels made: 1 grey, 3 colour.</summary>
    public int Channels => Indexed || Samples >= 3 ? 3 : 1;

    /// <summary>Bytes between a pixel and its left neighbour, for the filters.</summary>
    public int Step => Math.Max(1, Bits * Samples / 8);

    public int RowBytes(int columns) => (columns * Bits * Samples + 7) / 8;

    /// <summary>Null for what the standard does not have.</summary>
    public static PngLayout? Of(byte bits, byte colour, List<PngPart> parts, ReadOnlySpan<byte> file)
    {
        bool eight = bits is 8 or 16, any = eight || bits is 1 or 2 or 4;
        var palette = Body("PLTE", file);
        return colour switch
        {
            0 when any => new(bits, 1, false, [], []),
            2 when eight => new(bits, 3, false, [], []),
            3 when any && bits < 16 && palette.Length >= 3 => new(bits, 1, false, palette, Body("tRNS", file)),
            4 when eight => new(bits, 2, true, [], []),
            6 when eight => new(bits, 4, true, [], []),
            _ => null,
        };

        byte[] Body(string name, ReadOnlySpan<byte> f)
        {
            foreach (var part in parts)
                if (part.Name == name) return part.Body(f).ToArray();
            return [];
        }
    }

    /// <summary>Pixel <paramref name="column"/> of a row, 8 bits a channel, laid on white.</summary>
    public void Put(byte[] row, int column, byte[] to, int at)
    {
        if (Indexed)
        {
            var index = Math.Min(Sample(row, column), Palette.Length / 3 - 1);
            var cover = index < Cover.Length ? Cover[index] : 255;
            for (var c = 0; c < 3; c++) to[at + c] = OnWhite(Palette[index * 3 + c], cover);
            return;
        }
        var solid = Clear ? Eight(row, column * Samples + Samples - 1) : 255;
        for (var c = 0; c < Channels; c++) to[at + c] = OnWhite(Eight(row, column * Samples + c), solid);
    }

    static byte OnWhite(int value, int cover) => (byte)(255 + (value - 255) * cover / 255);

    int Eight(byte[] row, int sample) => Bits switch
    {
        16 => row[sample * 2],
        8 => row[sample],
        _ => Sample(row, sample) * 255 / ((1 << Bits) - 1),
    };

    int Sample(byte[] row, int sample)
    {
        if (Bits == 8) return row[sample];
        var bit = sample * Bits;
        return row[bit >> 3] >> (8 - Bits - (bit & 7)) & ((1 << Bits) - 1);
    }
}
