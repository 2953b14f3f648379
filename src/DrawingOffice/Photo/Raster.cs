using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo;

/// <summary>
/// A picture as rows of 8-bit pixels from the top left: grey (1 channel), red green blue (3), or with opacity behind (4, not looked at).
/// A place in it is in pixels, x to the right and y down from the picture's top left corner, so that the first pixel's middle is (0.5, 0.5).
/// </summary>
/// <param name="Pixels">Width · height · channels bytes; not to be changed once it is handed over.</param>
public sealed record Raster(int Width, int Height, int Channels, byte[] Pixels)
{
    /// <summary>Pixels; more is no gain for a part on a sheet and chokes a phone.</summary>
    public const int Most = 40_000_000;

    /// <summary>Pixels a side; cause: a target needs some twenty marks, each at least twelve pixels wide.</summary>
    public const int LeastSide = 240;

    /// <summary>The refusal this raster earns, or null.</summary>
    public Refusal? Refused() =>
        Channels is not (1 or 3 or 4) ? Refusal.Of("picture", $"{Channels} channels", "grey, colour or colour with opacity: 1, 3 or 4 channels")
        : Width <= 0 || Height <= 0 || (long)Width * Height > Most ? Refusal.Of("picture", Said, "at least one pixel and at most 40 million")
        : Pixels.LongLength != (long)Width * Height * Channels ? Refusal.Of("picture", $"{Pixels.LongLength} bytes", $"{Said} pixels of {Channels} bytes need {(long)Width * Height * Channels}")
        : Math.Min(Width, Height) < LeastSide ? Refusal.Of("picture", Said, $"at least {LeastSide} pixels a side, or nothing can be measured in it")
        : null;

    string Said => $"{Width} x {Height}";
}
