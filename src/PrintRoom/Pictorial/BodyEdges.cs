using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Pictorial;

/// <summary>An edge of a body between one or two facets; <paramref name="Second"/> is −1 on an open border.</summary>
/// <param name="Rim">The circle it is a chord of, or −1.</param>
readonly record struct BodyEdge(Vec3 A, Vec3 B, int First, int Second, int Rim);

/// <summary>Finds the edges of a body by the corners its facets share.</summary>
static class BodyEdges
{
    public static ImmutableArray<BodyEdge> Of(Body body)
    {
        var welded = new Welder();
        var sides = new Dictionary<(int, int), (int First, int Second)>();
        for (var f = 0; f < body.Facets.Length; f++)
        {
            foreach (var loop in body.Facets[f].Loops)
                for (int i = 0, j = loop.Length - 1; i < loop.Length; j = i++)
                {
                    var (a, b) = (welded.Index(loop[j]), welded.Index(loop[i]));
                    if (a == b) continue;
                    var key = a < b ? (a, b) : (b, a);
                    sides[key] = sides.TryGetValue(key, out var known) ? (known.First, f) : (f, -1);
                }
        }
        return [.. sides.Select(s => new BodyEdge(welded[s.Key.Item1], welded[s.Key.Item2], s.Value.First, s.Value.Second, RimOf(body, welded[s.Key.Item1], welded[s.Key.Item2])))];
    }

    static int RimOf(Body body, Vec3 a, Vec3 b)
    {
        for (var i = 0; i < body.Rims.Length; i++)
            if (On(body.Rims[i], a) && On(body.Rims[i], b)) return i;
        return -1;
    }

    static bool On(Rim rim, Vec3 p)
    {
        var d = p - rim.Centre;
        return Math.Abs(d.Dot(rim.Normal)) <= Body.Same && Math.Abs(d.Length - rim.Radius) <= Body.Same;
    }

    /// <summary>Gives corners within <see cref="Body.Same"/> one number, by a grid of cells of that size.</summary>
    sealed class Welder
    {
        readonly Dictionary<(long, long, long), int> _cells = [];
        readonly List<Vec3> _points = [];

        public Vec3 this[int i] => _points[i];

        public int Index(Vec3 p)
        {
            // Cells are four times the tolerance, so a neighbour is found in the eight cells round the point.
            const double cell = 4 * Body.Same;
            for (var k = 0; k < 8; k++)
            {
                var key = Cell(p, (k & 1) == 0 ? -1 : 1, (k & 2) == 0 ? -1 : 1, (k & 4) == 0 ? -1 : 1, cell);
                if (_cells.TryGetValue(key, out var i) && _points[i].DistanceTo(p) <= Body.Same) return i;
            }
            _cells.TryAdd(Cell(p, 0, 0, 0, cell), _points.Count);
            _points.Add(p);
            return _points.Count - 1;
        }

        static (long, long, long) Cell(Vec3 p, int x, int y, int z, double cell) =>
            ((long)Math.Floor((p.X + x * Body.Same) / cell), (long)Math.Floor((p.Y + y * Body.Same) / cell), (long)Math.Floor((p.Z + z * Body.Same) / cell));
    }
}
