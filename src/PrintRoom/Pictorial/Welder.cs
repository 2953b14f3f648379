using WitnessMark.Maths;

namespace WitnessMark.PrintRoom.Pictorial;

/// <summary>Gives corners within <see cref="Body.Same"/> one number, by a grid of cells of that size.</summary>
sealed class Welder
{
    readonly Dictionary<(long, long, long), int> _cells = [];
    readonly List<Vec3> _points = [];

    public IReadOnlyList<Vec3> Points => _points;

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
