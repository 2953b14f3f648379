using System.Collections.Immutable;
using System.Globalization;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Pieces.Nesting;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.PlanningOffice;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.PrintRoom.Screen;

namespace WitnessMark.FrontOffice.MakeShape;

/// <summary>A typed shape to be laid on sheets, written on a card and printed.</summary>
/// <param name="Name">File names begin with it.</param>
/// <param name="Number">The part's number.</param>
/// <param name="Paper">A4 or A3.</param>
public sealed record ShapePlanAsked(ShapeAsked Shape, string Name, string Number, string Paper, Shop Shop, int Quantity, bool Grain, ImmutableArray<Hazard> Hazards, DateTimeOffset Created)
{
    /// <exception cref="Maths.RefusedException">What is typed cannot be made.</exception>
    public KitRequest Request()
    {
        var (kit, metal) = (Shape.Make().Kit, Shape.Metal);
        return new(kit, Name, new TitleFields(kit.Title, Number) { Material = metal.Name, Date = DateOnly.FromDateTime(Created.Date) }, metal)
        {
            Paper = Paper == PaperSize.A3.Name ? PaperSize.A3 : PaperSize.A4,
            Created = Created,
            Shop = Shop,
            Quantity = Quantity,
            Grain = Grain,
            Hazards = Hazards,
        };
    }
}

/// <summary>How a kit is laid, its card and all its files.</summary>
/// <param name="Sheets">A picture of each stock sheet.</param>
/// <param name="Words">How good the laying is: sheets, waste, the least that any laying takes.</param>
/// <param name="Files">Those most asked for, one by one, with words for each.</param>
/// <param name="Zip">Every file of the kit.</param>
public sealed record ShapePlan(ImmutableArray<ShownPicture> Sheets, ImmutableArray<string> Words, RouteCard Card, ImmutableArray<NamedFile> Files, byte[] Zip)
{
    /// <exception cref="Maths.RefusedException">What is typed cannot be made, or the shop's facts are out of their range.</exception>
    public static ShapePlan Of(ShapePlanAsked asked)
    {
        var request = asked.Request();
        var nest = KitNest.Of(request);
        var files = KitFiles.Of(request, nest).ToList();
        return new([.. nest.Sheets.Select(s => new ShownPicture(s.Words(), Svg.Write(s.ToSheet(s.Words()))))], [.. Said(nest)],
            KitCard.Of(request, nest), [.. Asked(files)], PrintOut.Zip(request.Name, files).Bytes);
    }

    static IEnumerable<NamedFile> Asked(List<PrintOut> files)
    {
        foreach (var (end, words) in new[] { ("-whole.pdf", "Whole, PDF"), ("-template.pdf", "1:1 template, PDF"), (".dxf", "For the cutter, DXF"), (".stl", "Solid, STL"), ("-lists.csv", "Welds and bends, CSV"), ("-card.pdf", "Job card, PDF") })
        {
            var such = files.Where(f => f.FileName.EndsWith(end, StringComparison.Ordinal)).ToList();
            // Many of a kind are better taken in one.
            if (such.Count is 1 or 2) foreach (var file in such) yield return new(such.Count == 1 ? words : $"{words}: {file.FileName}", file);
        }
    }

    static IEnumerable<string> Said(NestPlan nest)
    {
        if (nest.Sheets.Length > 0)
            yield return string.Create(CultureInfo.InvariantCulture,
                $"{nest.Sheets.Length} {(nest.Sheets.Length == 1 ? "sheet" : "sheets")}, {nest.Waste:0%} of it waste. The metal of all blanks is {nest.LeastArea / 1e6:0.###} m² of the {nest.Bought / 1e6:0.###} m² bought: no laying needs less. Best of {nest.Tried} orders tried; another order may still do better.");
        foreach (var name in nest.TooLarge) yield return $"{name} fits no sheet on the shop's list: buy a longer one, or make it in two.";
    }
}

/// <param name="Words">As a button says it.</param>
public sealed record NamedFile(string Words, PrintOut File);
