using WitnessMark.DrawingOffice.Photo.Cameras;
using WitnessMark.DrawingOffice.Photo.Targets;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Seeing;

/// <summary>A square with its place on a lattice of unknown start and turn.</summary>
/// <param name="Turn">Quarter turns from the square's own axes to the lattice's.</param>
readonly record struct Placed(Square Square, int Column, int Row, int Turn);

/// <summary>
/// Squares joined with their neighbours two sides away. Each square's own four corners tell, nearby, where the next must be, however
/// slanting the view; so no camera is needed yet.
/// </summary>
static class Lattice
{
    const double Step = Target.Pitch / Target.Side;

    /// <summary>In sides. Cause: corners good to a twentieth of a side, carried two sides on, miss by a quarter.</summary>
    const double Off = 0.4;

    static readonly (int X, int Y)[] s_ways = [(1, 0), (0, 1), (-1, 0), (0, -1)];

    /// <summary>Groups of squares that hang together, largest first.</summary>
    public static List<List<Placed>> Of(IReadOnlyList<Square> squares)
    {
        var next = new int[squares.Count, 4];
        for (var i = 0; i < squares.Count; i++)
            for (var way = 0; way < 4; way++) next[i, way] = Neighbour(squares, i, way);
        var (placed, groups) = (new Placed?[squares.Count], new List<List<Placed>>());
        for (var seed = 0; seed < squares.Count; seed++)
            if (placed[seed] is null) groups.Add(Grown(squares, next, placed, seed));
        return [.. groups.OrderByDescending(g => g.Count)];
    }

    static List<Placed> Grown(IReadOnlyList<Square> squares, int[,] next, Placed?[] placed, int seed)
    {
        var (group, queue) = (new List<Placed>(), new Queue<int>());
        placed[seed] = new(squares[seed], 0, 0, 0);
        queue.Enqueue(seed);
        while (queue.TryDequeue(out var i))
        {
            var here = placed[i]!.Value;
            group.Add(here);
            for (var way = 0; way < 4; way++)
            {
                var j = next[i, way];
                if (j < 0 || placed[j] is not null) continue;
                // Both must name each other; the way back gives the neighbour's own turn.
                var back = Enumerable.Range(0, 4).FirstOrDefault(w => next[j, w] == i, -1);
                if (back < 0) continue;
                var across = (way + here.Turn) % 4;
                var (x, y) = s_ways[across];
                placed[j] = new(squares[j], here.Column + x, here.Row + y, (across + 2 - back + 4) % 4);
                queue.Enqueue(j);
            }
        }
        return group;
    }

    /// <summary>The square nearest to where the next must be that way, or −1.</summary>
    static int Neighbour(IReadOnlyList<Square> squares, int i, int way)
    {
        var (back, wanted) = (squares[i].Back, new Vec2(s_ways[way].X, s_ways[way].Y) * Step);
        var ahead = Math.Sign(back[8] + back[6] * squares[i].Middle.X + back[7] * squares[i].Middle.Y);
        var (best, least) = (-1, Off);
        for (var j = 0; j < squares.Count; j++)
        {
            var m = squares[j].Middle;
            if (j == i || Math.Sign(back[8] + back[6] * m.X + back[7] * m.Y) != ahead) continue;
            if (Homography.Map(back, m).DistanceTo(wanted) is var d && d < least) (best, least) = (j, d);
        }
        return best;
    }
}
