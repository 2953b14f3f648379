using WitnessMark.Maths;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.DrawingOffice.Photo.Edges;

/// <summary>
/// Circles through points: least squares of the distances from the circle (geometric fit; Gander, Golub and Strebel 1994), by Gauss-Newton from the
/// circle of least algebraic error.
/// </summary>
public static class Circles
{
    const int MostSteps = 100;

    /// <summary>Null for fewer than three points, or points on a line.</summary>
    public static (Vec2 Centre, double Radius)? Fit(IReadOnlyList<Vec2> points)
    {
        if (Algebraic(points) is not var (centre, radius)) return null;
        Span<double> normal = stackalloc double[9], step = stackalloc double[3];
        for (var round = 0; round < MostSteps; round++)
        {
            normal.Clear();
            step.Clear();
            foreach (var p in points)
            {
                var (d, away) = ((p - centre).Unit, p.DistanceTo(centre) - radius);
                ReadOnlySpan<double> row = [d.X, d.Y, 1];
                for (var i = 0; i < 3; i++)
                {
                    step[i] += row[i] * away;
                    for (var k = 0; k < 3; k++) normal[3 * i + k] += row[i] * row[k];
                }
            }
            if (!Cholesky.Solve(normal, step)) return null;
            (centre, radius) = (centre + new Vec2(step[0], step[1]), radius + step[2]);
            if (!double.IsFinite(radius) || radius <= 0) return null;
            if (Math.Abs(step[0]) + Math.Abs(step[1]) + Math.Abs(step[2]) < 1e-12 * radius) break;
        }
        return (centre, radius);
    }

    /// <summary>Least squares of |p − c|² − r²: one linear system, a start only; it draws short arcs too tight.</summary>
    public static (Vec2 Centre, double Radius)? Algebraic(IReadOnlyList<Vec2> points)
    {
        if (points.Count < 3) return null;
        var middle = Vec2.Zero;
        foreach (var p in points) middle += p;
        middle /= points.Count;
        double xx = 0, xy = 0, yy = 0, xz = 0, yz = 0, zz = 0;
        foreach (var p in points)
        {
            var d = p - middle;
            var z = d.Dot(d);
            (xx, xy, yy) = (xx + d.X * d.X, xy + d.X * d.Y, yy + d.Y * d.Y);
            (xz, yz, zz) = (xz + d.X * z, yz + d.Y * z, zz + z);
        }
        var det = xx * yy - xy * xy;
        if (!(det > 1e-18 * (xx + yy) * (xx + yy))) return null;
        var c = new Vec2(xz * yy - yz * xy, yz * xx - xz * xy) / (2 * det);
        return (middle + c, Math.Sqrt(c.Dot(c) + zz / points.Count));
    }

    /// <summary>The circle through three points; null when they lie on a line.</summary>
    public static (Vec2 Centre, double Radius)? Through(Vec2 a, Vec2 b, Vec2 c)
    {
        var (p, q) = (b - a, c - a);
        var area = 2 * p.Cross(q);
        if (Math.Abs(area) < 1e-9 * p.Length * q.Length) return null;
        var m = new Vec2(q.Y * p.Dot(p) - p.Y * q.Dot(q), p.X * q.Dot(q) - q.X * p.Dot(p)) / area;
        return (a + m, m.Length);
    }
}
