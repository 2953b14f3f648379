namespace WitnessMark.DrawingOffice.Drafting.Paper;

/// <summary>A trimmed sheet of the ISO 216 A series as it lies before the reader, mm.</summary>
public readonly record struct PaperSize(string Name, double Width, double Height)
{
    public static PaperSize A4Tall { get; } = A(4);

    public static PaperSize A4Wide { get; } = A(4).Turned;

    public static PaperSize A3Wide { get; } = A(3).Turned;

    /// <summary>The same sheet turned a quarter turn.</summary>
    public PaperSize Turned => new(Name, Height, Width);

    /// <summary>An upright sheet: A0 is 841 × 1189 mm, each next one is halved across its length and rounded down to whole mm.</summary>
    /// <param name="n">0 to 10.</param>
    public static PaperSize A(int n)
    {
        var (width, height) = (841, 1189);
        for (var i = 0; i < n; i++) (width, height) = (height / 2, width);
        return new($"A{n}", width, height);
    }
}
