using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Tags;

/// <summary>A sheet of labels, named by their size. The labels stand in the middle of the sheet.</summary>
/// <param name="Width">Of one label, mm.</param>
/// <param name="GapAcross">Between neighbours in a row, mm.</param>
public sealed record LabelGrid(PaperSize Paper, double Width, double Height, int Across, int Down, double GapAcross, double GapDown)
{
    public int Count => Across * Down;

    public string Name => string.Create(CultureInfo.InvariantCulture, $"{Width:0.##}x{Height:0.##}");

    /// <summary>Sizes that label sheets are sold in; common practice, printers shift by about a millimetre.</summary>
    public static ImmutableArray<LabelGrid> Common { get; } =
    [
        new(PaperSize.A4, 38.1, 21.2, 5, 13, 2.5, 0),
        new(PaperSize.A4, 48.5, 25.4, 4, 10, 0, 0),
        new(PaperSize.A4, 63.5, 38.1, 3, 7, 2.5, 0),
        new(PaperSize.A4, 70, 36, 3, 8, 0, 0),
        new(PaperSize.A4, 99.1, 38.1, 2, 7, 2.5, 0),
        new(PaperSize.A4, 99.1, 67.7, 2, 4, 2.5, 0),
        new(PaperSize.A4, 105, 148, 2, 2, 0, 0),
    ];

    /// <summary>Where a label lies on its sheet.</summary>
    /// <param name="number">From 0, along the rows from the top left.</param>
    public Box Label(int number)
    {
        var (column, row) = (number % Across, number / Across);
        var left = (Paper.Width - Across * Width - (Across - 1) * GapAcross) / 2 + column * (Width + GapAcross);
        var top = (Paper.Height + Down * Height + (Down - 1) * GapDown) / 2 - row * (Height + GapDown);
        return new(left, top - Height, left + Width, top);
    }

    /// <summary><c>63.5x38.1</c> for a common size, or <c>60x30,3x9</c> for a size with how many across and down on A4.</summary>
    public static Parsed<LabelGrid> Read(string text)
    {
        var plain = text.Trim().ToLowerInvariant().Replace('×', 'x').Replace(" ", "");
        if (Common.FirstOrDefault(g => g.Name == plain) is { } known) return known;
        var wanted = $"give one of {string.Join(", ", Common.Select(g => g.Name))}, or a size with how many across and down, such as 60x30,3x9";
        if (plain.Split(',') is not [var size, var count] || Pair(size) is not { } mm || Pair(count) is not { } n) return Refusal.Of("grid", text, wanted);
        if (n.A % 1 != 0 || n.B % 1 != 0 || n.A is not (>= 1 and <= 50) || n.B is not (>= 1 and <= 50)) return Refusal.Of("grid", text, "1 to 50 labels across and down");
        if (mm.A < 10 || mm.B < 10 || mm.A * n.A > PaperSize.A4.Width || mm.B * n.B > PaperSize.A4.Height)
            return Refusal.Of("grid", text, "labels of at least 10 mm that fit on A4, 210 x 297 mm");
        return new LabelGrid(PaperSize.A4, mm.A, mm.B, (int)n.A, (int)n.B, 0, 0);
    }

    static (double A, double B)? Pair(string text) =>
        text.Split('x') is [var a, var b] && Number(a) is { } x && Number(b) is { } y ? (x, y) : null;

    static double? Number(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var x) && x < 1000 ? x : null;
}
