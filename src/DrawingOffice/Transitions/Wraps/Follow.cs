using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Geometry;

namespace WitnessMark.DrawingOffice.Transitions;

/// <summary>Follows a curve by chords, close together only where it turns.</summary>
public static class Follow
{
    const int Deepest = 14;

    /// <param name="pieces">Even shares of the parameter that are always points.</param>
    /// <param name="error">Greatest distance of the curve from its chords, mm, as seen at the quarters of each chord.</param>
    public static ImmutableArray<Vec2> Curve(Func<double, Vec2> at, double from, double to, int pieces, double error)
    {
        var points = ImmutableArray.CreateBuilder<Vec2>();
        points.Add(at(from));
        for (var k = 0; k < pieces; k++)
        {
            var (start, end) = (from + (to - from) * k / pieces, from + (to - from) * (k + 1) / pieces);
            Between(points, at, start, at(start), end, at(end), error, 0);
            points.Add(at(end));
        }
        return points.ToImmutable();
    }

    static void Between(ImmutableArray<Vec2>.Builder points, Func<double, Vec2> at, double from, Vec2 a, double to, Vec2 b, double error, int depth)
    {
        var middle = (from + to) / 2;
        var m = at(middle);
        var off = Math.Max(Plane2.Distance(m, a, b), Math.Max(Plane2.Distance(at((from + middle) / 2), a, b), Plane2.Distance(at((middle + to) / 2), a, b)));
        if (off <= error || depth >= Deepest) return;
        Between(points, at, from, a, middle, m, error, depth + 1);
        points.Add(m);
        Between(points, at, middle, m, to, b, error, depth + 1);
    }
}
