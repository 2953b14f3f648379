namespace WitnessMark.PrintRoom.Screen;

/// <summary>How a sheet becomes a picture for the screen.</summary>
/// <param name="RealText">Lays real, unseen text over the lettering, so that it can be found, copied and read aloud.</param>
/// <param name="Paper">Fills the sheet with the paper's colour; without it the page shows through.</param>
public sealed record SvgOptions(bool RealText = false, bool Paper = true)
{
    public static SvgOptions Default { get; } = new();
}
