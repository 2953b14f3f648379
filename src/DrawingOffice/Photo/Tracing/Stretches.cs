using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Tracing;

/// <summary>A run of edge points that one line or arc takes.</summary>
readonly record struct Stretch(int From, int To, bool Straight);

/// <summary>
/// Cuts an edge into straights and arcs: of all ways to cut it at a net of points, the one with the least sum of squares over the scatter plus a
/// price for every figure (Schwarz's ln n each), by dynamic programming.
/// </summary>
static class Stretches
{
    /// <summary>Cuts considered. Cause: pairs grow with the square, and 200 take some milliseconds.</summary>
    const int MostNodes = 200;

    /// <summary>A stretch between two cuts leaves out a net's width at either end, for blur rounds a corner and the cut may miss it.</summary>
    const int Least = 3;

    /// <param name="scatter">mm; see <see cref="Scatter"/>.</param>
    public static List<Stretch> Of(IReadOnlyList<Vec2> points, double scatter)
    {
        var (n, moments) = (points.Count, new Moments(points));
        var step = Math.Max(3, n / MostNodes);
        int[] nodes = [.. Enumerable.Range(0, n / step + 1).Select(k => k * step).Where(k => k < n), n];
        var price = Math.Log(n);
        var cost = new double[nodes.Length];
        var from = new (int Node, bool Straight)[nodes.Length];
        Array.Fill(cost, double.PositiveInfinity);
        cost[0] = 0;
        for (var j = 1; j < nodes.Length; j++)
            for (var i = 0; i <= j - Least; i++)
            {
                if (double.IsInfinity(cost[i])) continue;
                var (a, b) = (nodes[i + 1], nodes[j - 1]);
                var (line, circle) = b - a < 3 ? (0, double.PositiveInfinity) : moments.Left(a, b);
                var (straight, round) = (line / (scatter * scatter) + 3 * price, circle / (scatter * scatter) + 5 * price);
                var least = cost[i] + Math.Min(straight, round);
                if (least < cost[j]) (cost[j], from[j]) = (least, (i, straight <= round));
            }
        var found = new List<Stretch>();
        for (var j = nodes.Length - 1; j > 0 && !double.IsInfinity(cost[j]); j = from[j].Node)
            found.Add(new(nodes[from[j].Node + 1], nodes[j - 1], from[j].Straight));
        found.Reverse();
        return found;
    }

    /// <summary>
    /// How far a point lies off the middle of its neighbours three to either side, as a robust standard deviation of one point, but not below
    /// <paramref name="least"/>: neighbours share pixels, and a sum of squares must not take their common stray for a bend.
    /// </summary>
    public static double Scatter(IReadOnlyList<Vec2> points, double least)
    {
        if (points.Count < 12) return least;
        double[] off = [.. Enumerable.Range(3, points.Count - 6).Select(k => (points[k + 3] - points[k - 3]).Unit.Cross(points[k] - (points[k - 3] + points[k + 3]) / 2)).Select(Math.Abs).Order()];
        return Math.Max(least, 1.4826 * off[off.Length / 2] / Math.Sqrt(1.5));
    }
}
