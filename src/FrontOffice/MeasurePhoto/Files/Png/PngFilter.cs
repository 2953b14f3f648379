namespace WitnessMark.FrontOffice.MeasurePhoto.Files.Png;

/// <summary>What a row of a PNG was taken less of before it was packed (ISO/IEC 15948, 9).</summary>
static class PngFilter
{
    public const byte Up = 2;

    /// <param name="step">Bytes from a pixel to its left neighbour; at least 1.</param>
    public static void Undo(int filter, byte[] row, byte[] above, int step)
    {
        for (var i = 0; i < row.Length; i++)
        {
            int left = i >= step ? row[i - step] : 0, up = above[i], corner = i >= step ? above[i - step] : 0;
            row[i] += (byte)(filter switch
            {
                0 => 0,
                1 => left,
                Up => up,
                3 => (left + up) / 2,
                _ => Nearest(left, up, corner),
            });
        }
    }

    /// <summary>Of the three neighbours the one nearest to left + up − corner; left first, then up.</summary>
    static int Nearest(int left, int up, int corner)
    {
        int guess = left + up - corner, toLeft = Math.Abs(guess - left), toUp = Math.Abs(guess - up), toCorner = Math.Abs(guess - corner);
        return toLeft <= toUp && toLeft <= toCorner ? left : toUp <= toCorner ? up : corner;
    }
}
