using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Tests.Survey.Solid;

/// <summary>Least-squares fits of a line, plane, circle and cylinder to places in space, worked out here without the engine.</summary>
static class Fits
{
    /// <summary>Through the centroid; the direction of least or most spread (singular vectors).</summary>
    public static (Vec3 Through, Vec3 Direction, double Rms) Plane(IReadOnlyList<Vec3> places) => Spread(places, 2);

    public static (Vec3 Through, Vec3 Direction, double Rms) Line(IReadOnlyList<Vec3> places) => Spread(places, 0);

    static (Vec3, Vec3, double) Spread(IReadOnlyList<Vec3> places, int which)
    {
        var middle = places.Aggregate(Vec3.Zero, (a, b) => a + b) / places.Count;
        var svd = Matrix<double>.Build.Dense(places.Count, 3, (r, c) => Part(places[r] - middle, c)).Svd();
        var v = svd.VT.Row(which);
        var left = Enumerable.Range(0, 3).Where(k => which == 2 ? k == 2 : k != 0).Sum(k => svd.S[k] * svd.S[k]);
        return (middle, new Vec3(v[0], v[1], v[2]), Math.Sqrt(left / places.Count));
    }

    static double Part(Vec3 v, int part) => part switch { 0 => v.X, 1 => v.Y, _ => v.Z };

    /// <summary>Circle in space: centre, two tilts of the axis from a start, radius; distances from the circle itself.</summary>
    public static double[] Circle(IReadOnlyList<Vec3> places, Vec3 centre, Vec3 axis, double radius) => Newton([centre.X, centre.Y, centre.Z, 0, 0, radius], x =>
    {
        var n = Tilted(axis, x[3], x[4]);
        var c = new Vec3(x[0], x[1], x[2]);
        return [.. places.SelectMany(p =>
        {
            var height = n.Dot(p - c);
            return (double[])[height, (p - c - height * n).Length - x[5]];
        })];
    });

    /// <summary>Cylinder: two shifts of the axis across, two tilts, radius.</summary>
    public static double[] Cylinder(IReadOnlyList<Vec3> places, Vec3 through, Vec3 axis, double radius) => Newton([0, 0, 0, 0, radius], x =>
    {
        var (e1, e2) = Across(axis);
        var (n, a) = (Tilted(axis, x[2], x[3]), through + x[0] * e1 + x[1] * e2);
        return [.. places.Select(p => (p - a - n.Dot(p - a) * n).Length - x[4])];
    });

    public static Vec3 Tilted(Vec3 axis, double one, double two)
    {
        var (e1, e2) = Across(axis);
        return (axis.Unit + one * e1 + two * e2).Unit;
    }

    public static (Vec3, Vec3) Across(Vec3 axis)
    {
        var e1 = (Math.Abs(axis.X) < 0.6 * axis.Length ? new Vec3(1, 0, 0) : new Vec3(0, 1, 0)).Cross(axis).Unit;
        return (e1, axis.Unit.Cross(e1));
    }

    /// <summary>Gauss-Newton with derivatives by central differences and a dense QR.</summary>
    static double[] Newton(double[] x, Func<double[], double[]> residuals)
    {
        for (var round = 0; round < 60; round++)
        {
            var f = residuals(x);
            var j = Matrix<double>.Build.Dense(f.Length, x.Length);
            for (var u = 0; u < x.Length; u++)
            {
                var (keep, h) = (x[u], 1e-5);
                x[u] = keep + h;
                var above = residuals(x);
                x[u] = keep - h;
                var below = residuals(x);
                x[u] = keep;
                for (var r = 0; r < f.Length; r++) j[r, u] = (above[r] - below[r]) / (2 * h);
            }
            var step = j.QR().Solve(Vector<double>.Build.Dense(f));
            for (var u = 0; u < x.Length; u++) x[u] -= step[u];
            if (step.AbsoluteMaximum() < 1e-12) break;
        }
        return x;
    }

    /// <summary>Places taken as three heights each over three set-ups that stand square, all lying on one feature of unknown place.</summary>
    public static SolidSample Sample(IReadOnlyList<Vec3> places, SolidFeature on, double sigma = 0.01)
    {
        ImmutableArray<SolidFeature> features =
        [
            .. places.Select((p, i) => new SolidFeature($"P{i}", SolidKind.Point) { Sketch = p }),
            new("X", SolidKind.SetUp) { SketchDirection = new(1, 0, 0) }, new("Y", SolidKind.SetUp) { SketchDirection = new(0, 1, 0) }, new("Z", SolidKind.SetUp) { SketchDirection = new(0, 0, 1) },
            on,
        ];
        var readings = new List<SolidReading>();
        void Add(SolidReadingKind kind, string from, string to, double value, double s) => readings.Add(new SolidReading(readings.Count, kind, from, to, value, s));
        for (var i = 0; i < places.Count; i++)
        {
            Add(SolidReadingKind.Height, $"P{i}", "X", places[i].X, sigma);
            Add(SolidReadingKind.Height, $"P{i}", "Y", places[i].Y, sigma);
            Add(SolidReadingKind.Height, $"P{i}", "Z", places[i].Z, sigma);
            Add(SolidReadingKind.On, $"P{i}", on.Id, 0, 0);
        }
        Add(SolidReadingKind.Square, "X", "Y", 0, 0);
        Add(SolidReadingKind.Square, "Y", "Z", 0, 0);
        Add(SolidReadingKind.Square, "Z", "X", 0, 0);
        return new SolidSample("fit", "places taken by three heights", features, [.. readings]);
    }
}
