namespace WitnessMark.PrintRoom.Paper;

/// <summary>What a PDF says about itself. Everything comes from outside, so the same sheets give the same bytes.</summary>
/// <param name="Title">Shown by a reader in its title bar; the first sheet's title when empty.</param>
/// <param name="Created">Stamped into the file when given.</param>
/// <param name="Compressed">Deflates the drawing. Plain, the file is about five times as long and can be read by eye.</param>
public sealed record PdfOptions(string Title = "", DateTimeOffset? Created = null, bool Compressed = true)
{
    public static PdfOptions Default { get; } = new();
}
