using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey;

/// <summary>Exact conditions are heavy rows in the survey; here they are constraints proper, with Lagrange multipliers.</summary>
[Truth(Grade.SecondImplementation, "Gauss-Newton on the dense Lagrange (Karush-Kuhn-Tucker) system, MathNet.Numerics 5.0.0")]
public class ExactConditionTests(ITestOutputHelper output)
{
    /// <summary>Sizes by calliper and a radius by gauge; then sizes by micrometer and the radius by tape.</summary>
    [Theory]
    [InlineData(1, 0.02, 0.1), InlineData(2, 0.02, 0.1), InlineData(3, 0.02, 0.1)]
    [InlineData(1, 0.003, 0.5), InlineData(2, 0.003, 0.5), InlineData(3, 0.003, 0.5)]
    public void Distances_and_uncertainties_agree_and_the_conditions_hold(ulong seed, double fine, double rough)
    {
        var plan = Adjust.Solve(Conditioned(new Chance(seed), fine, rough), searchMirrors: false);
        Assert.True(plan.Convergence.Converged);
        Assert.Equal(0, plan.LooseFreedoms);
        var breach = DenseRows.Of(plan).Breach.AbsoluteMaximum();

        var (x, covariance) = Lagrange(plan.Solver, plan.Fit.X);
        var (far, off) = (0.0, 0.0);
        foreach (var d in plan.Distances())
        {
            var (distance, std) = Distance(plan.Solver.Layout, x, covariance, d);
            far = Math.Max(far, Math.Abs(d.Distance - distance));
            off = Math.Max(off, Math.Abs(d.Std / std - 1));
        }
        output.WriteLine($"conditions kept to {breach:0.0e0} mm (rad), distances to {far:0.0e0} mm, ± to {off:0.0e0}");
        Assert.InRange(breach, 0, 1e-6);
        Assert.InRange(far, 0, 1e-5);
        // NormalMatrix's bound, 1e-16·cond², where cond is what the roughest reading and an exact condition are apart; and what the conditions' own ± add (up to four of them act on one distance here).
        var sure = plan.Readings.Where(r => plan.Solver.Sample.Readings[r.Index].Kind == ReadingKind.On).Min(r => plan.Solver.Sigma(r.Index));
        Assert.InRange(off, 0, 10e-16 * Math.Pow(rough / sure, 2) + 4 * Math.Pow(sure / fine, 2));
    }

    /// <summary>A rectangular plate known to be square, three holes in line, a round top through two corners.</summary>
    static Sample Conditioned(Chance chance, double fine, double rough)
    {
        (string Id, FeatureKind Kind, Vec2 At, double Size)[] places =
        [
            ("A", FeatureKind.Point, new(0, 0), 0), ("B", FeatureKind.Point, new(100, 0), 0), ("C", FeatureKind.Point, new(100, 60), 0), ("D", FeatureKind.Point, new(0, 60), 0),
            ("H1", FeatureKind.Hole, new(20, 20), 8), ("H2", FeatureKind.Hole, new(50, 30), 10), ("H3", FeatureKind.Hole, new(80, 40), 12), ("R", FeatureKind.Arc, new(50, 20), Math.Sqrt(4100)),
        ];
        var readings = ImmutableArray.CreateBuilder<Reading>();
        void Read(ReadingKind kind, string from, string? to, double value, double sigma) =>
            readings.Add(new Reading(readings.Count, kind, from, to, sigma == 0 ? 0 : value + sigma * chance.Normal(), sigma));

        for (var i = 0; i < 7; i++)
            for (var k = i + 1; k < 7; k++)
                if (chance.Below(4) > 0) Read(ReadingKind.CentreDistance, places[i].Id, places[k].Id, places[i].At.DistanceTo(places[k].At), 0.02);
        foreach (var h in places[4..7]) Read(ReadingKind.Diameter, h.Id, null, h.Size, fine);
        Read(ReadingKind.CentreToEdge, "H1", "AB", 20, 0.05);
        Read(ReadingKind.EdgeToHole, "H3", "BC", 14, 0.05);
        Read(ReadingKind.Radius, "R", null, places[7].Size, rough);
        Read(ReadingKind.Square, "AB", "BC", 0, 0);
        Read(ReadingKind.Parallel, "AB", "CD", 0, 0);
        Read(ReadingKind.Square, "DA", "AB", 0, 0);
        Read(ReadingKind.On, "H2", "L", 0, 0);
        Feature Edge(string id, string from, string to) => new(id, FeatureKind.Edge) { From = from, To = to };
        return new Sample("conditioned", "a plate with exact conditions",
        [
            .. places.Select(p => new Feature(p.Id, p.Kind) { Sketch = p.At + new Vec2(chance.Normal(), chance.Normal()), SketchSize = p.Size > 0 ? p.Size : null, From = p.Id == "R" ? "D" : null, To = p.Id == "R" ? "C" : null }),
            Edge("AB", "A", "B"), Edge("BC", "B", "C"), Edge("CD", "C", "D"), Edge("DA", "D", "A"), Edge("L", "H1", "H3"),
        ], readings.ToImmutable());
    }

    /// <summary>Solve [N + DDᵀ, Cᵀ; C, 0] for the step until it is nil; the datum motions D are stopped by DDᵀ, which no distance feels.</summary>
    static (double[] X, Matrix<double> Covariance) Lagrange(Solver solver, double[] start)
    {
        var chance = new Chance(99);
        var n = start.Length;
        var x = start.Select(v => v + 0.1 * chance.Normal()).ToArray();
        for (var k = 0; ; k++)
        {
            var rows = DenseRows.Of(solver, x);
            var datum = Matrix<double>.Build.DenseOfColumnArrays(solver.Layout.DatumMotions(x, Vec2.Zero));
            var normal = rows.Weighted.TransposeThisAndMultiply(rows.Weighted) + 100 * datum * datum.Transpose();
            var c = rows.Conditions;
            var kkt = Matrix<double>.Build.DenseOfMatrixArray(new[,] { { normal, c.Transpose() }, { c, Matrix<double>.Build.Dense(c.RowCount, c.RowCount) } }).LU();
            var right = Vector<double>.Build.Dense(n + c.RowCount);
            right.SetSubVector(0, n, -rows.Weighted.TransposeThisAndMultiply(rows.Misfit));
            right.SetSubVector(n, c.RowCount, -rows.Breach);
            var step = kkt.Solve(right).SubVector(0, n);
            for (var u = 0; u < n; u++) x[u] += step[u];
            if (step.AbsoluteMaximum() < 1e-11) return (x, kkt.Inverse().SubMatrix(0, n, 0, n));
            Assert.True(k < 50, "the Lagrange iteration must settle");
        }
    }

    static (double Value, double Std) Distance(Layout layout, double[] x, Matrix<double> covariance, PairDistance pair)
    {
        var (a, b) = (layout.IndexOf(pair.From), layout.IndexOf(pair.To));
        var between = layout.Place(b, x) - layout.Place(a, x);
        var g = Vector<double>.Build.Dense(layout.Count);
        (g[layout.First(a)], g[layout.First(a) + 1]) = (-between.Unit.X, -between.Unit.Y);
        (g[layout.First(b)], g[layout.First(b) + 1]) = (between.Unit.X, between.Unit.Y);
        return (between.Length, Math.Sqrt(g * covariance * g));
    }
}
