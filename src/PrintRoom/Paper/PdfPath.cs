using System.Text;
using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Paper;

static class PdfPath
{
    /// <summary>The path operators of a curve (ISO 32000-1, 8.5.2); painting it is left to the caller.</summary>
    public static string Of(Curve curve, int decimals)
    {
        string P(Vec2 p) => $"{Figures.Of(p.X, decimals)} {Figures.Of(p.Y, decimals)}";
        var path = new StringBuilder($"{P(curve.Start)} m\n");
        foreach (var piece in curve.Pieces)
            path.Append(piece.Straight ? $"{P(piece.End)} l\n" : $"{P(piece.C1)} {P(piece.C2)} {P(piece.End)} c\n");
        if (curve.Closed) path.Append("h\n");
        return path.ToString();
    }
}
