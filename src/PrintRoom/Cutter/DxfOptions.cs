namespace WitnessMark.PrintRoom.Cutter;

/// <summary>How a sheet becomes a DXF.</summary>
/// <param name="LetteringAsStrokes">Letters become lines for a machine that engraves; otherwise they stay text.</param>
public sealed record DxfOptions(bool LetteringAsStrokes = false)
{
    public static DxfOptions Default { get; } = new();
}
