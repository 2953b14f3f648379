using System.Text;
using WitnessMark.DrawingOffice.Drafting.Paper;
using WitnessMark.DrawingOffice.Pieces;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.FrontOffice.CutBlank;

namespace WitnessMark.FrontOffice.MakeShape;

/// <summary>A bracket of flat faces folded from one blank, as a shape among the others.</summary>
static class FoldedShape
{
    const string Example = """
        {
          "title": "Angle bracket",
          "thickness": 1.6,
          "measured_to": "outside",
          "faces": [
            { "name": "base", "size": [80, 50], "holes": [ { "name": "H1", "at": [12, 25], "diameter": 6.5 } ] },
            { "name": "upright", "size": [80, 32] }
          ],
          "bends": [ { "parent": "base", "child": "upright", "side": 1, "angle_degrees": 90, "inside_radius": 1.6 } ]
        }
        """;

    public static ShapeKind Kind { get; } = new("folded", "Folded bracket", "Flat faces and the bends that join them, from one blank.", [new("Angle bracket", Example)], (text, wish, _) => new(Make(text, wish)));

    static Kit Make(string text, ShapeWish wish)
    {
        var tree = BracketFile.Read(Encoding.UTF8.GetBytes(text)).Value;
        var cut = CutBlank.CutBlank.Run(new(tree, new TitleFields(tree.Title, "")) { Method = wish.Bend });
        return new(tree.Title, [Piece.Of(cut.Blank, "blank")])
        {
            Shape = FoldedBody.Of(tree),
            Steps = [.. cut.Order is { Possible: true } order ? order.Steps.Select(s => s.Words) : []],
            Cautions = cut.Cautions,
        };
    }
}
