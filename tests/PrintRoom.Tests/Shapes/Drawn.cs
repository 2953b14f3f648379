using WitnessMark.Maths;
using WitnessMark.PrintRoom.Shapes;

namespace WitnessMark.PrintRoom.Tests.Shapes;

/// <summary>Marks measured by walking along them.</summary>
static class Drawn
{
    public static double Length(Mark mark) => mark switch
    {
        ArcMark m => Math.Min(Math.Abs(m.Sweep), 2 * Math.PI) * m.Radius,
        CircleMark m => 2 * Math.PI * m.Radius,
        _ => Curves.Of(mark).Select(c => c.Points(1e-3)).Sum(p => p.Zip(p.Skip(1), (a, b) => a.DistanceTo(b)).Sum()),
    };

    public static double Area(PathMark mark) => mark.Points.Zip([.. mark.Points.Skip(1), mark.Points[0]], (a, b) => a.Cross(b)).Sum() / 2;

    /// <summary>The mark as straight pieces, nowhere further than 0.001 mm from it.</summary>
    public static IEnumerable<(Vec2 A, Vec2 B)> Pieces(Mark mark) =>
        Curves.Of(mark).Select(c => c.Points(1e-3)).SelectMany(p => p.Zip(p.Skip(1)));

    /// <summary>Points on the mark, no further apart than <paramref name="step"/> mm, ends included.</summary>
    public static IEnumerable<Vec2> Points(Mark mark, double step) => Pieces(mark).SelectMany(piece =>
    {
        var count = (int)(piece.A.DistanceTo(piece.B) / step) + 1;
        return Enumerable.Range(0, count + 1).Select(i => piece.A + (double)i / count * (piece.B - piece.A));
    });

    public static bool Near((Vec2 A, Vec2 B)[] pieces, Vec2 p, double within)
    {
        foreach (var (a, b) in pieces)
        {
            var d = b - a;
            var along = d.Dot(d) == 0 ? 0 : Math.Clamp((p - a).Dot(d) / d.Dot(d), 0, 1);
            if (p.DistanceTo(a + along * d) < within) return true;
        }
        return false;
    }
}
