using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;
using WitnessMark.PrintRoom.Solids;

namespace WitnessMark.DrawingOffice.Rails.Flattening;

/// <summary>A curved surface laid flat, triangle by triangle as nearly true as can be.</summary>
/// <param name="Points">Corners in the plane, mm, in the order of the mesh.</param>
/// <param name="Stretch">Greatest principal strain that forming the flat piece into the surface asks for, a share: positive.</param>
/// <param name="Shrink">Least principal strain, a share: negative.</param>
/// <param name="AreaChange">Area of the surface over that of the flat piece, less 1.</param>
/// <param name="Rounds">Rounds taken.</param>
/// <param name="Settled">False when the rounds ran out or the person stopped it.</param>
public sealed record Flattened(ImmutableArray<Vec2> Points, double Stretch, double Shrink, double AreaChange, int Rounds, bool Settled);

/// <summary>
/// As-rigid-as-possible flattening: the flat triangles that deviate least, in the sense of cotangent-weighted squares, from turned copies of
/// those on the surface (local and global steps by turns; Sorkine and Alexa 2007, Liu and others 2008, from memory). A developable surface
/// comes out isometric to the mesh's own facets; a doubly curved one keeps the strain that no flat sheet can be without.
/// </summary>
public static class Flatten
{
    /// <summary>Rounds after which it gives up; each moves every corner once.</summary>
    public const int MostRounds = 2000;

    /// <summary>A round that moves no corner by more than this settles it, mm: far under a scribed line.</summary>
    public const double Settled = 1e-7;

    /// <param name="start">A guess without flipped triangles, mm, one place for each corner.</param>
    /// <param name="progress">Rounds done.</param>
    /// <param name="stop">Ends it with what there is.</param>
    public static Flattened Run(Mesh mesh, IReadOnlyList<Vec2> start, IProgress<int>? progress = null, CancellationToken stop = default)
    {
        var work = new FlatteningWork(mesh, start);
        var (round, settled) = (0, false);
        while (!settled && round < MostRounds && !stop.IsCancellationRequested)
        {
            settled = work.Round() <= Settled;
            if (++round % 20 == 0) progress?.Report(round);
        }
        var (stretch, shrink, area) = work.Strains();
        return new(work.Points, stretch, shrink, area, round, settled);
    }
}

/// <summary>The sums of one flattening; the matrix is factored once.</summary>
sealed class FlatteningWork
{
    readonly ImmutableArray<Triangle> _triangles;
    readonly (Vec2 P, Vec2 Q)[] _flat;
    readonly (double A, double B, double C)[] _cot;
    readonly NormalMatrix _normal;
    readonly double[] _x, _y, _bx, _by;

    public FlatteningWork(Mesh mesh, IReadOnlyList<Vec2> start)
    {
        _triangles = mesh.Triangles;
        _flat = [.. _triangles.Select(t => Laid(mesh, t))];
        _cot = [.. _flat.Select(Cotangents)];
        var n = mesh.Points.Length;
        (_x, _y, _bx, _by) = ([.. start.Select(p => p.X)], [.. start.Select(p => p.Y)], new double[n], new double[n]);
        (_normal, var weights) = Laplacian(n);
        _normal.Assemble(weights);
        // The whole piece may lie anywhere: one corner is held by a weight on it, which bears no force.
        var held = new double[n];
        held[0] = _normal.Diagonal(0);
        if (!_normal.Factor(held)) throw new RefusedException(Refusal.Of("mesh", $"{_triangles.Length} triangles", "some are too thin to be laid flat"));
    }

    public ImmutableArray<Vec2> Points => [.. _x.Select((x, i) => new Vec2(x, _y[i]))];

    /// <summary>One turn of every triangle and one move of every corner; the greatest move, mm.</summary>
    public double Round()
    {
        Array.Clear(_bx);
        Array.Clear(_by);
        for (var k = 0; k < _triangles.Length; k++)
        {
            var (t, (p, q), cot) = (_triangles[k], _flat[k], _cot[k]);
            var turn = Turn(t, p, q, cot);
            Pull(t.A, t.B, turn, p, cot.C);
            Pull(t.B, t.C, turn, q - p, cot.A);
            Pull(t.C, t.A, turn, -q, cot.B);
        }
        _bx[0] += _normal.Diagonal(0) * _x[0];
        _by[0] += _normal.Diagonal(0) * _y[0];
        var (x, y) = (new double[_x.Length], new double[_y.Length]);
        _normal.Solve(_bx, x);
        _normal.Solve(_by, y);
        var moved = 0.0;
        for (var i = 0; i < x.Length; i++) moved = Math.Max(moved, Math.Max(Math.Abs(x[i] - _x[i]), Math.Abs(y[i] - _y[i])));
        x.CopyTo(_x, 0);
        y.CopyTo(_y, 0);
        return moved;
    }

    /// <summary>The side a to b shall be the turned side of the surface.</summary>
    void Pull(int a, int b, Vec2 turn, Vec2 side, double weight)
    {
        var (dx, dy) = (weight * (turn.X * side.X - turn.Y * side.Y), weight * (turn.Y * side.X + turn.X * side.Y));
        (_bx[a], _by[a], _bx[b], _by[b]) = (_bx[a] - dx, _by[a] - dy, _bx[b] + dx, _by[b] + dy);
    }

    /// <summary>Best turn of a flat triangle onto where its corners lie: the argument of the sum of side · conjugate side.</summary>
    Vec2 Turn(Triangle t, Vec2 p, Vec2 q, (double A, double B, double C) cot)
    {
        var (re, im) = (0.0, 0.0);
        void Side(int a, int b, Vec2 side, double weight)
        {
            var (ux, uy) = (_x[b] - _x[a], _y[b] - _y[a]);
            re += weight * (ux * side.X + uy * side.Y);
            im += weight * (uy * side.X - ux * side.Y);
        }
        Side(t.A, t.B, p, cot.C);
        Side(t.B, t.C, q - p, cot.A);
        Side(t.C, t.A, -q, cot.B);
        return new Vec2(re, im).Unit is { Length: > 0 } unit ? unit : new(1, 0);
    }

    /// <summary>Principal strains from flat to formed over all triangles, and the change of area.</summary>
    public (double Stretch, double Shrink, double Area) Strains()
    {
        var (stretch, shrink, formed, flat) = (0.0, 0.0, 0.0, 0.0);
        for (var k = 0; k < _triangles.Length; k++)
        {
            var (t, (p, q)) = (_triangles[k], _flat[k]);
            var (u, v) = (new Vec2(_x[t.B] - _x[t.A], _y[t.B] - _y[t.A]), new Vec2(_x[t.C] - _x[t.A], _y[t.C] - _y[t.A]));
            var det = u.Cross(v);
            // Columns of the map from the flat piece to the surface.
            var a = (p * v.Y - q * u.Y) / det;
            var b = (q * u.X - p * v.X) / det;
            var (half, product) = ((a.Dot(a) + b.Dot(b)) / 2, a.Cross(b));
            var root = Math.Sqrt(Math.Max(0, half * half - product * product));
            stretch = Math.Max(stretch, Math.Sqrt(half + root) - 1);
            shrink = Math.Min(shrink, Math.Sqrt(Math.Max(0, half - root)) - 1);
            formed += p.Cross(q) / 2;
            flat += det / 2;
        }
        return (stretch, shrink, formed / flat - 1);
    }

    (NormalMatrix, double[]) Laplacian(int n)
    {
        var sides = new Dictionary<(int, int), double>();
        for (var k = 0; k < _triangles.Length; k++)
        {
            var (t, cot) = (_triangles[k], _cot[k]);
            foreach (var (a, b, w) in new[] { (t.A, t.B, cot.C), (t.B, t.C, cot.A), (t.C, t.A, cot.B) })
            {
                var key = (Math.Min(a, b), Math.Max(a, b));
                sides[key] = sides.GetValueOrDefault(key) + w;
            }
        }
        var rows = new SparseRows([.. sides.Keys.Select(s => new[] { s.Item1, s.Item2 })], n);
        for (var r = 0; r < rows.Rows; r++) (rows.ValuesOf(r)[0], rows.ValuesOf(r)[1]) = (1, -1);
        return (new NormalMatrix(rows, [.. Enumerable.Range(0, n)]), [.. sides.Values]);
    }

    /// <summary>The triangle in its own plane, its first corner at the origin.</summary>
    static (Vec2, Vec2) Laid(Mesh mesh, Triangle t)
    {
        var (a, b, c) = mesh.Corners(t);
        var (p, q) = (b - a, c - a);
        var x = p.Unit;
        var along = q.Dot(x);
        return (new(p.Length, 0), new(along, (q - x * along).Length));
    }

    static (double A, double B, double C) Cotangents((Vec2 P, Vec2 Q) t)
    {
        var twice = t.P.Cross(t.Q);
        return (t.P.Dot(t.Q) / twice, -t.P.Dot(t.Q - t.P) / twice, t.Q.Dot(t.Q - t.P) / twice);
    }
}
