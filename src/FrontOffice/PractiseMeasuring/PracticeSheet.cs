using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.Forms;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Paper;

namespace WitnessMark.FrontOffice.PractiseMeasuring;

/// <summary>The sheet to print at true size and to measure: a plate without figures, and lines that show whether the printer kept the scale.</summary>
public static class PracticeSheet
{
    public const int LastNumber = PracticePlate.Last;

    /// <summary>Lengths of the check lines, mm (4 in is 101.6 mm), each across and up.</summary>
    internal static ImmutableArray<(string Words, double Mm)> Lengths { get; } = [("100 mm", 100), ("4 in", 101.6)];

    internal static ImmutableArray<(string Words, bool Up)> Ways { get; } = [("across", false), ("up", true)];

    /// <exception cref="RefusedException">There is no such sheet.</exception>
    public static PrintRoom.Sheet Draw(int number, PaperSize paper)
    {
        var plate = PracticePlate.Of(number);
        ImmutableArray<RoundHole> holes = [.. plate.Holes.Select(h => new RoundHole(h.Id, h.At, new Sized(h.Diameter)))];
        return PlateSheet.Draw(
            new(plate.Corners, [.. plate.Edges.Select(e => e.Id)], holes)
            {
                Words =
                [
                    "Print at 100 %, never \"fit to page\". Measure the check lines first: what is not 100 mm or 4 in (101.6 mm) was scaled by the printer; write down what you read and go on, it will be reckoned with.",
                    "Everything runs from the middle of a line to the middle of a line. Lay the sheet flat on a board.",
                ],
                Checks = [.. Ways.SelectMany(w => Lengths.Select(l => new CheckLine($"check line {w.Words}, {l.Words}", l.Mm, w.Up)))],
            },
            paper,
            new TitleFields("Practice plate", Spelled(number)) { Material = $"paper, {paper.Name}", MeasuredFrom = "nothing: it was drawn" });
    }

    public static PrintOut Pdf(int number, PaperSize paper, DateTimeOffset? created) => PrintOut.Pdf(Name(number, paper), [Draw(number, paper)], created);

    public static PrintOut Svg(int number, PaperSize paper) => PrintOut.Svg(Name(number, paper), Draw(number, paper));

    /// <summary>The paper that is named: A4 or Letter.</summary>
    public static PaperSize Paper(string name) => name.Trim().ToLowerInvariant() switch
    {
        "a4" => PaperSize.A4,
        "letter" => PaperSize.Letter,
        _ => throw new RefusedException(Refusal.Of("paper", name, "write A4 or Letter")),
    };

    static string Name(int number, PaperSize paper) => string.Create(CultureInfo.InvariantCulture, $"practice-{number}-{paper.Name.ToLowerInvariant()}");

    static string Spelled(int number) => string.Create(CultureInfo.InvariantCulture, $"sheet {number}");
}
