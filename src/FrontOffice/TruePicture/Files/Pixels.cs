namespace WitnessMark.FrontOffice.TruePicture.Files;

/// <summary>Decoded pixels by rows from the top, 8 bits each.</summary>
/// <param name="Channels">1: grey; 3: red, green, blue.</param>
readonly record struct Pixels(int Width, int Height, int Channels, byte[] Bytes)
{
    /// <summary>Set upright.</summary>
    /// <param name="turn">1 to 8 as the Exif tag 0x0112 counts: where the first row and the first column of the stored picture belong.</param>
    public Pixels Turned(int turn)
    {
        if (turn == Exif.Upright) return this;
        var (width, height) = turn >= 5 ? (Height, Width) : (Width, Height);
        var to = new byte[Bytes.Length];
        for (int y = 0, at = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                var (fromX, fromY) = turn switch
                {
                    2 => (Width - 1 - x, y),
                    3 => (Width - 1 - x, Height - 1 - y),
                    4 => (x, Height - 1 - y),
                    5 => (y, x),
                    6 => (y, Height - 1 - x),
                    7 => (Width - 1 - y, Height - 1 - x),
                    _ => (Width - 1 - y, x),
                };
                for (int c = 0, from = (fromY * Width + fromX) * Channels; c < Channels; c++) to[at++] = Bytes[from + c];
            }
        }
        return new(width, height, Channels, to);
    }
}
