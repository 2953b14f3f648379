using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Offers;

/// <summary>The directions in which a part was set out, likeliest first.</summary>
static class Frames
{
    /// <summary>rad. Directions that were accepted as parallel or square agree far closer.</summary>
    const double Same = 1e-6;

    /// <summary>mm: two stations nearer than this may be one. About two and a half times what hand making leaves between two holes.</summary>
    const double OneStation = 0.3;

    /// <summary>A direction through two holes must line up so many pairs more than the edges do before it is a frame of its own.</summary>
    const int Convincing = 5;

    /// <param name="x">With every accepted direction holding exactly.</param>
    public static ImmutableArray<Frame> Of(Shape shape, double[] x)
    {
        var classes = new List<List<int>>();
        foreach (var f in shape.Directed)
        {
            var known = classes.Find(c => Math.Abs(Math.IEEERemainder(shape.Turn(f, x) - shape.Turn(c[0], x), Math.PI / 2)) < Same);
            if (known is null) classes.Add([f]);
            else known.Add(f);
        }
        var ofEdges = classes.OrderByDescending(c => c.Sum(shape.Reach)).Select(c => Of(shape, x, c)).Take(2).ToList();
        var best = ofEdges.FirstOrDefault();
        var pair = ByPairs(shape, x);
        if (pair is null) return [.. ofEdges];
        if (best is null) return [pair];
        var turned = Math.Abs(Math.IEEERemainder(pair.Direction(x).Angle - best.Direction(x).Angle, Math.PI / 2));
        return turned > 0.02 && LinedUp(shape, x, pair.Direction(x)) >= LinedUp(shape, x, best.Direction(x)) + Convincing ? [best, pair] : [best, .. ofEdges.Skip(1)];
    }

    static Frame Of(Shape shape, double[] x, List<int> members)
    {
        // The first of the long ones, so that a tenth of a millimetre does not change which edge is named.
        var root = members.First(f => shape.Reach(f) > 0.9 * members.Max(shape.Reach));
        bool Along(int f) => Math.Abs(Math.IEEERemainder(shape.Turn(f, x) - shape.Turn(root, x), Math.PI)) < 2 * Same;
        var edges = members.Where(shape.Edges.Contains).ToList();
        return new(shape, root, -1, [.. edges.Where(Along)], [.. edges.Where(f => !Along(f))]);
    }

    /// <summary>The line through two places that lines up most others, the longer of equals; null below three places.</summary>
    static Frame? ByPairs(Shape shape, double[] x)
    {
        var places = shape.Places;
        if (places.Length < 2) return null;
        var (most, longest, found) = (-1, 0.0, (-1, -1));
        for (var i = 0; i < places.Length; i++)
            for (var k = i + 1; k < places.Length; k++)
            {
                var v = shape.At(places[k], x) - shape.At(places[i], x);
                if (v.Length < shape.Extent / 5) continue;
                var count = LinedUp(shape, x, v.Unit);
                if (count < most || (count == most && v.Length <= longest)) continue;
                (most, longest, found) = (count, v.Length, (places[i], places[k]));
            }
        return found.Item1 < 0 ? null : new(shape, found.Item1, found.Item2, [], []);
    }

    /// <summary>Neighbouring stations that may be one, along and across.</summary>
    static int LinedUp(Shape shape, double[] x, Vec2 along)
    {
        var count = 0;
        foreach (var way in (Vec2[])[along, along.Left])
        {
            var stations = new double[shape.Places.Length];
            for (var i = 0; i < stations.Length; i++) stations[i] = way.Dot(shape.At(shape.Places[i], x));
            Array.Sort(stations);
            for (var i = 1; i < stations.Length; i++)
                if (stations[i] - stations[i - 1] < OneStation) count++;
        }
        return count;
    }
}
