using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Sheetwork;

static class Flange
{
    const int Stations = 64;

    /// <summary>
    /// How far a flange reaches from its tangent line over at least three quarters of the bend, mm: tapered ends and small notches
    /// do not matter to the blade, a flange short over a quarter of its length does. Taken at 64 stations along the bend.
    /// </summary>
    public static double Reach(Loop outline, double bendLength)
    {
        var polygon = outline.Flatten(0.05);
        var heights = Enumerable.Range(0, Stations).Select(i => FirstAbove(polygon.AsSpan(), bendLength * (i + 0.5) / Stations)).Order().ToArray();
        return heights[Stations / 4];
    }

    static double FirstAbove(ReadOnlySpan<Vec2> polygon, double x)
    {
        var least = double.PositiveInfinity;
        for (int i = 0, j = polygon.Length - 1; i < polygon.Length; j = i++)
        {
            var (a, b) = (polygon[j], polygon[i]);
            if (a.X > x == b.X > x) continue;
            var y = a.Y + (x - a.X) / (b.X - a.X) * (b.Y - a.Y);
            if (y > FaceTree.OnSide) least = Math.Min(least, y);
        }
        return double.IsFinite(least) ? least : 0;
    }
}
