using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.FrontOffice.Printing;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Pictorial;

namespace WitnessMark.FrontOffice.CutBlank;

/// <summary>A folded part to be cut flat.</summary>
public sealed record CutRequest(FaceTree Tree, TitleFields Title)
{
    /// <summary>How the length of sheet in a bend is found.</summary>
    public BendMethod Method { get; init; } = new Din6935();

    /// <summary>Null leaves out what depends on the machine.</summary>
    public Folder? Folder { get; init; } = ShopFolder.Of(PlanningOffice.Shop.Usual);

    /// <summary>Null leaves out the minimum radius.</summary>
    public Ductility? Metal { get; init; }
}

/// <summary>The blank, how to fold it, its drawings, and what to be careful of.</summary>
/// <param name="Order">Null without a folder.</param>
/// <param name="Layout">The blank at 1:1 with its bend lines lettered.</param>
/// <param name="Pictorial">The folded part.</param>
public sealed record CutResult(
    FaceTree Tree, Blank Blank, BendOrder? Order, FlatPart Part, DetailDrawing Drawing, Sheet Layout, Sheet Pictorial, ImmutableArray<Caution> Cautions)
{
    /// <summary>Drawing as PDF and SVG, blank for the cutter as DXF and for paper as tiled PDF, the folded part as SVG.</summary>
    public IEnumerable<PrintOut> Files(string name, PrintRoom.Paper.PaperSize paper, DateTimeOffset? created) =>
    [
        PrintOut.Pdf($"{name}-blank-drawing", Drawing.Sheets, created),
        PrintOut.Svg($"{name}-blank-drawing", Drawing.Sheets[0]),
        PrintOut.Dxf($"{name}-blank", Layout),
        PrintOut.Svg($"{name}-blank", Layout),
        PrintOut.Template($"{name}-blank-template", Layout, paper, created),
        PrintOut.Svg($"{name}-folded", Pictorial),
        PrintOut.Pdf($"{name}-folded", [Pictorial], created),
    ];
}

/// <summary>From a folded part to the flat blank that makes it.</summary>
public static class CutBlank
{
    const double PictureMargin = 10;

    /// <exception cref="RefusedException">The method gives no allowance for a bend, or the blank fits no sheet.</exception>
    public static CutResult Run(CutRequest request)
    {
        var tree = request.Tree;
        var blank = Develop.Blank(tree, request.Method).Value;
        var order = request.Folder is { } folder && tree.Bends.Length > 0 ? BendOrder.Find(tree, blank, folder) : null;
        // Check.All would search the order a second time.
        var machine = request.Folder is { } f ? [.. Check.MachineLimits(tree, f), .. order?.Cautions ?? []] : ImmutableArray<Caution>.Empty;
        ImmutableArray<Caution> cautions = [.. Check.All(tree, blank, null, request.Metal), .. machine];
        var part = BlankPart.Of(blank, cautions, order);
        var drawing = DetailDrawing.Draw(part, request.Title);
        return new(tree, blank, order, part, drawing, blank.ToSheet(order), Picture(tree), cautions);
    }

    static Sheet Picture(FaceTree tree)
    {
        var view = PictorialDrawing.Draw(FoldedBody.Of(tree), Axonometry.Isometric);
        var room = new Vec2(PictureMargin, PictureMargin);
        return new(tree.Title, view.Width + 2 * PictureMargin, view.Height + 2 * PictureMargin, [.. view.Marks.Select(m => PrintRoom.Shapes.Move.By(m, room))]);
    }
}
