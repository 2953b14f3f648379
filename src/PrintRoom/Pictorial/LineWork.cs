using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Pictorial;

/// <summary>Short segments gathered and joined end to end where they run on smoothly, so that a curve is one stroke of the pen.</summary>
sealed class LineWork
{
    /// <summary>Ends nearer than this are one, mm on paper.</summary>
    const double Same = 1e-5;

    /// <summary>Strokes are joined across a turn of less than this, radians.</summary>
    const double Smooth = 35 * Math.PI / 180;

    readonly List<(Vec2 A, Vec2 B, int Rim)> _parts = [];

    public void Add(Vec2 a, Vec2 b, int rim)
    {
        if (a.DistanceTo(b) > Same) _parts.Add((a, b, rim));
    }

    public bool Holds(int rim) => _parts.Any(p => p.Rim == rim);

    /// <param name="drawnWhole">Circles that are drawn as ellipses instead.</param>
    public IEnumerable<Mark> Marks(Vec2 corner, string layer, Stroke stroke, Func<int, bool> drawnWhole)
    {
        foreach (var path in Joined([.. _parts.Where(p => p.Rim < 0 || !drawnWhole(p.Rim))]))
        {
            var points = path.Select(p => p - corner).ToImmutableArray();
            var closed = points.Length > 3 && points[0].DistanceTo(points[^1]) <= Same;
            yield return points.Length == 2 ? new LineMark(points[0], points[1], layer, stroke)
                : new PathMark(closed ? points.RemoveAt(points.Length - 1) : points, closed, false, layer, stroke);
        }
    }

    static IEnumerable<LinkedList<Vec2>> Joined((Vec2 A, Vec2 B, int Rim)[] parts)
    {
        var ends = new Dictionary<(long, long), List<int>>();
        for (var i = 0; i < parts.Length; i++)
            foreach (var p in new[] { parts[i].A, parts[i].B })
                (ends.TryGetValue(Cell(p), out var list) ? list : ends[Cell(p)] = []).Add(i);
        var used = new bool[parts.Length];
        for (var i = 0; i < parts.Length; i++)
        {
            if (used[i]) continue;
            used[i] = true;
            var path = new LinkedList<Vec2>([parts[i].A, parts[i].B]);
            while (Next(path.Last!.Value, path.Last.Previous!.Value, parts, ends, used) is { } p) path.AddLast(p);
            while (Next(path.First!.Value, path.First.Next!.Value, parts, ends, used) is { } p) path.AddFirst(p);
            yield return path;
        }
    }

    static Vec2? Next(Vec2 end, Vec2 before, (Vec2 A, Vec2 B, int Rim)[] parts, Dictionary<(long, long), List<int>> ends, bool[] used)
    {
        var (best, bestTurn, at) = (-1, Smooth, Vec2.Zero);
        foreach (var i in Around(end, ends))
        {
            if (used[i]) continue;
            var other = parts[i].A.DistanceTo(end) <= Same ? parts[i].B : parts[i].B.DistanceTo(end) <= Same ? parts[i].A : end;
            if (other == end) continue;
            var (d, e) = (end - before, other - end);
            var turn = Math.Abs(Math.Atan2(d.Cross(e), d.Dot(e)));
            if (turn < bestTurn) (best, bestTurn, at) = (i, turn, other);
        }
        if (best < 0) return null;
        used[best] = true;
        return at;
    }

    static (long, long) Cell(Vec2 p) => ((long)Math.Floor(p.X / (8 * Same)), (long)Math.Floor(p.Y / (8 * Same)));

    static IEnumerable<int> Around(Vec2 p, Dictionary<(long, long), List<int>> ends)
    {
        HashSet<(long, long)> cells = [Cell(p + new Vec2(Same, Same)), Cell(p + new Vec2(Same, -Same)), Cell(p + new Vec2(-Same, Same)), Cell(p + new Vec2(-Same, -Same))];
        foreach (var cell in cells)
            if (ends.TryGetValue(cell, out var list))
                foreach (var i in list) yield return i;
    }
}
