namespace WitnessMark.Maths.Geometry;

/// <summary>
/// Cuts a polygon with openings into triangles by clipping ears. Every corner is kept, those that lie straight between their neighbours too,
/// so that pieces that share a side share its triangles' corners. n corners take a time of n² as a rule.
/// </summary>
public sealed class Ears
{
    /// <summary>A corner nearer to a diagonal than this share of it lies on it.</summary>
    const double Near = 1e-10;

    readonly List<(int Id, Vec2 At)> _ring;

    Ears(List<(int, Vec2)> ring) => _ring = ring;

    /// <param name="outline">Anticlockwise, not crossing itself, each corner with its number.</param>
    /// <param name="openings">Clockwise, inside the outline and apart from each other.</param>
    /// <returns>Corner numbers, anticlockwise: for n corners and h openings n + 2h − 2 triangles. What crosses itself gets the same number, some turned over.</returns>
    public static List<(int A, int B, int C)> Of(IReadOnlyList<(int Id, Vec2 At)> outline, IReadOnlyList<IReadOnlyList<(int Id, Vec2 At)>> openings)
    {
        var ring = outline.ToList();
        // From the right: what lies to the right of an opening is joined before it, so that it always sees the ring.
        var waiting = openings.OrderByDescending(o => o.Max(p => p.At.X)).ToList();
        while (waiting.Count > 0)
        {
            var opening = waiting[0];
            ring = Joined(ring, opening, waiting);
            waiting.RemoveAt(0);
        }
        return new Ears(ring).Clip();
    }

    static List<(int, Vec2)> Joined(List<(int Id, Vec2 At)> ring, IReadOnlyList<(int Id, Vec2 At)> opening, List<IReadOnlyList<(int Id, Vec2 At)>> waiting)
    {
        var start = Enumerable.Range(0, opening.Count).MaxBy(i => opening[i].At.X);
        var from = opening[start].At;
        bool Sees(int k) => Opens(ring, k, from) && !Blocked(ring, from, ring[k].At) && waiting.All(w => !Blocked(w, from, ring[k].At));
        var order = Enumerable.Range(0, ring.Count).OrderBy(k => ring[k].At.DistanceTo(from)).ToList();
        var at = order.FindIndex(Sees) is var found && found >= 0 ? order[found] : order[0];
        return [.. ring.Take(at + 1), .. Enumerable.Range(0, opening.Count + 1).Select(i => opening[(start + i) % opening.Count]), .. ring.Skip(at)];
    }

    /// <summary>The inside of the ring at a corner lies towards a point.</summary>
    static bool Opens(List<(int Id, Vec2 At)> ring, int k, Vec2 towards)
    {
        var (before, here, after) = (ring[(k + ring.Count - 1) % ring.Count].At, ring[k].At, ring[(k + 1) % ring.Count].At);
        var (left, right) = ((here - before).Cross(towards - here) > 0, (after - here).Cross(towards - here) > 0);
        return (here - before).Cross(after - here) >= 0 ? left && right : left || right;
    }

    static bool Blocked(IReadOnlyList<(int Id, Vec2 At)> loop, Vec2 a, Vec2 b)
    {
        var near = Near * a.DistanceTo(b);
        for (int i = 0, j = loop.Count - 1; i < loop.Count; j = i++)
        {
            var (p, q) = (loop[j].At, loop[i].At);
            if (Plane2.Cross(a, b, p, q)) return true;
            if (q != a && q != b && Plane2.Distance(q, a, b) <= near) return true;
        }
        return false;
    }

    List<(int, int, int)> Clip()
    {
        var triangles = new List<(int, int, int)>(_ring.Count);
        var n = _ring.Count;
        var next = new int[n];
        var previous = new int[n];
        for (var i = 0; i < n; i++) (next[i], previous[(i + 1) % n]) = ((i + 1) % n, i);
        var (at, failed) = (0, 0);
        for (var left = n; left >= 3;)
        {
            var (p, q) = (previous[at], next[at]);
            // When rounding leaves no true ear any corner is clipped: the surface stays closed, which matters more than its shape there.
            if (left > 3 && failed <= left && !Ear(p, at, q, next, previous))
            {
                (at, failed) = (q, failed + 1);
                continue;
            }
            triangles.Add((_ring[p].Id, _ring[at].Id, _ring[q].Id));
            (next[p], previous[q]) = (q, p);
            (at, failed, left) = (next[q], 0, left - 1);
        }
        return triangles;
    }

    bool Ear(int p, int i, int q, int[] next, int[] previous)
    {
        var (a, b, c) = (_ring[p].At, _ring[i].At, _ring[q].At);
        var size = a.DistanceTo(c);
        if ((b - a).Cross(c - b) <= Near * size * size) return false;
        var (left, right) = (Math.Min(a.X, Math.Min(b.X, c.X)), Math.Max(a.X, Math.Max(b.X, c.X)));
        var (low, high) = (Math.Min(a.Y, Math.Min(b.Y, c.Y)), Math.Max(a.Y, Math.Max(b.Y, c.Y)));
        for (var j = next[q]; j != p; j = next[j])
        {
            var (id, at) = _ring[j];
            if (id == _ring[p].Id || id == _ring[i].Id || id == _ring[q].Id)
            {
                // A bridge to an opening passes here twice; its other side must not run through the ear.
                if (Plane2.Cross(a, c, at, _ring[next[j]].At) || Plane2.Cross(a, c, at, _ring[previous[j]].At)) return false;
                continue;
            }
            if (at.X < left - Near || at.X > right + Near || at.Y < low - Near || at.Y > high + Near) continue;
            if ((b - a).Cross(at - a) >= 0 && (c - b).Cross(at - b) >= 0 && (a - c).Cross(at - c) >= -Near * size * size) return false;
        }
        return true;
    }
}
