using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting.Solid;

/// <summary>Edges that close round a face. A hull of what was measured on it would hide what it need not: an L is no triangle.</summary>
static class FaceOutline
{
    /// <summary>mm: a measured corner lies off its face by less.</summary>
    const double On = 0.6;

    /// <param name="corners">Place of each corner.</param>
    /// <param name="edges">The two corners of each edge.</param>
    /// <returns>Corner after corner of the largest loop; empty where none closes, or where edges fork.</returns>
    public static ImmutableArray<Vec3> Of(Vec3 at, Vec3 normal, IReadOnlyDictionary<string, Vec3> corners, IEnumerable<(string A, string B)> edges)
    {
        var ways = edges.Where(e => Lies(e.A) && Lies(e.B)).SelectMany(e => new[] { (From: e.A, To: e.B), (From: e.B, To: e.A) }).Distinct().ToLookup(w => w.From, w => w.To);
        var (best, size) = (ImmutableArray<Vec3>.Empty, 0.0);
        var seen = new HashSet<string>();
        foreach (var start in ways.Select(w => w.Key))
        {
            if (!seen.Add(start) || Loop(start) is not { Count: > 2 } loop) continue;
            seen.UnionWith(loop);
            ImmutableArray<Vec3> points = [.. loop.Select(c => corners[c])];
            if (Math.Abs(Area(points).Dot(normal)) is var area && area > size) (best, size) = (points, area);
        }
        return best;

        bool Lies(string id) => corners.TryGetValue(id, out var p) && Math.Abs((p - at).Dot(normal)) < On;

        List<string>? Loop(string start)
        {
            var (path, before, here) = (new List<string> { start }, "", start);
            while (true)
            {
                string[] on = [.. ways[here].Where(o => o != before)];
                if (on.Length == 0 || ways[here].Count() != 2) return null;
                (before, here) = (here, on[0]);
                if (here == start) return path;
                if (path.Contains(here)) return null;
                path.Add(here);
            }
        }
    }

    static Vec3 Area(ImmutableArray<Vec3> loop) =>
        Enumerable.Range(1, loop.Length - 1).Aggregate(Vec3.Zero, (sum, i) => sum + (loop[i - 1] - loop[0]).Cross(loop[i] - loop[0]));
}
