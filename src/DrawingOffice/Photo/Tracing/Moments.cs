using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Photo.Tracing;

/// <summary>
/// Sums over the first points, so that the squares left by the best line or circle through any stretch cost the same few steps however long
/// it is. Places are taken from their middle; good to some 1e-8 mm² for parts on a sheet.
/// </summary>
sealed class Moments
{
    readonly double[][] _sums;

    public Moments(IReadOnlyList<Vec2> points)
    {
        var middle = points.Aggregate(Vec2.Zero, (a, p) => a + p) / points.Count;
        _sums = new double[points.Count + 1][];
        _sums[0] = new double[9];
        for (var k = 0; k < points.Count; k++)
        {
            var (x, y) = (points[k].X - middle.X, points[k].Y - middle.Y);
            var z = x * x + y * y;
            double[] own = [x, y, x * x, x * y, y * y, z, x * z, y * z, z * z];
            _sums[k + 1] = [.. own.Select((v, i) => v + _sums[k][i])];
        }
    }

    /// <summary>Squares of the distances left by the best line, and about those left by the best circle (algebraic), for points from up to but not to.</summary>
    public (double Line, double Circle) Left(int from, int to)
    {
        var n = (double)(to - from);
        Span<double> s = stackalloc double[9];
        for (var i = 0; i < 9; i++) s[i] = _sums[to][i] - _sums[from][i];
        var (mx, my, mz) = (s[0] / n, s[1] / n, s[5] / n);
        var (xx, xy, yy) = (s[2] - n * mx * mx, s[3] - n * mx * my, s[4] - n * my * my);
        var (xz, yz, zz) = (s[6] - n * mx * mz, s[7] - n * my * mz, s[8] - n * mz * mz);
        var line = Math.Max(0, (xx + yy) / 2 - Math.Sqrt((xx - yy) * (xx - yy) / 4 + xy * xy));
        var det = xx * yy - xy * xy;
        if (!(det > 1e-12 * (xx + yy) * (xx + yy))) return (line, double.PositiveInfinity);
        var (a, b) = ((xz * yy - yz * xy) / det, (yz * xx - xz * xy) / det);
        var r2 = (a * a + b * b) / 4 + mz - a * mx - b * my;
        return (line, r2 > 0 ? Math.Max(0, zz - a * xz - b * yz) / (4 * r2) : double.PositiveInfinity);
    }
}
