namespace WitnessMark.PrintRoom.Paper;

/// <summary>Paper to print on, mm, upright (ISO 216; Letter is 8½ by 11 in, ANSI/ASME Y14.1 size A).</summary>
public sealed record PaperSize(string Name, double Width, double Height)
{
    public static PaperSize A4 { get; } = new("A4", 210, 297);

    public static PaperSize A3 { get; } = new("A3", 297, 420);

    public static PaperSize Letter { get; } = new("Letter", 215.9, 279.4);

    public PaperSize Turned => new(Name, Height, Width);
}
