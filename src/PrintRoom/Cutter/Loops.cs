using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Cutter;

/// <summary>
/// Finds the closed profiles among loose lines and arcs, so that a cutter gets each as one polyline. Where three ends meet, nobody can
/// say which way the profile goes, and the pieces stay as they are.
/// </summary>
static class Loops
{
    /// <summary>mm; ends nearer than this are one corner. A hundred times what the file's six decimals lose.</summary>
    public const double Together = 1e-4;

    /// <summary>Each loop by the marks it is made of (their places in the list) and its corners in walking order.</summary>
    public static IEnumerable<(ImmutableArray<int> Marks, ImmutableArray<Corner> Corners)> In(ImmutableArray<Mark> marks)
    {
        var kinds = Enumerable.Range(0, marks.Length).GroupBy(i => (marks[i].Layer, marks[i].Stroke));
        return kinds.SelectMany(kind => Walk(kind.Select(i => (i, Side.Of(marks[i]))).Where(s => s.Item2 is not null).Select(s => (s.i, s.Item2!.Value))));
    }

    static IEnumerable<(ImmutableArray<int>, ImmutableArray<Corner>)> Walk(IEnumerable<(int Mark, Side Side)> sides)
    {
        var nodes = new Nodes();
        var edges = sides.Select(s => new Edge(s.Mark, s.Side, nodes.Of(s.Side.From), nodes.Of(s.Side.To))).ToList();
        var at = edges.SelectMany(e => new[] { (e.From, e), (e.To, e) }).ToLookup(e => e.Item1, e => e.e);
        var seen = new HashSet<Edge>();
        foreach (var first in edges.Where(e => !seen.Contains(e)))
        {
            var loop = new List<(Edge Edge, bool Forward)>();
            var (edge, node) = (first, first.From);
            while (seen.Add(edge))
            {
                var forward = edge.From == node;
                loop.Add((edge, forward));
                node = forward ? edge.To : edge.From;
                var next = at[node].Where(e => e != edge).ToList();
                if (at[node].Count() != 2 || next.Count != 1) break;
                edge = next[0];
            }
            if (loop.Count > 1 && node == first.From && edge == first)
                yield return ([.. loop.Select(l => l.Edge.Mark)], [.. loop.SelectMany(l => (l.Forward ? l.Edge.Side : l.Edge.Side.Reversed()).Corners)]);
        }
    }

    sealed record Edge(int Mark, Side Side, int From, int To)
    {
        public bool Equals(Edge? other) => Mark == other?.Mark;

        public override int GetHashCode() => Mark;
    }

    /// <summary>Numbers points; points that lie together get one number.</summary>
    sealed class Nodes
    {
        readonly Dictionary<(long, long), List<(Vec2 At, int Number)>> _cells = [];
        int _count;

        public int Of(Vec2 p)
        {
            var (x, y) = ((long)Math.Floor(p.X / Together), (long)Math.Floor(p.Y / Together));
            for (var i = x - 1; i <= x + 1; i++)
                for (var j = y - 1; j <= y + 1; j++)
                    if (_cells.TryGetValue((i, j), out var near))
                        foreach (var (at, number) in near)
                            if (at.DistanceTo(p) <= Together) return number;
            if (!_cells.TryGetValue((x, y), out var cell)) _cells[(x, y)] = cell = [];
            cell.Add((p, _count));
            return _count++;
        }
    }
}
