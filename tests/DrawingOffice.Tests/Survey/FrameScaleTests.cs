using System.Collections.Immutable;
using MathNet.Numerics.LinearAlgebra;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey;

public class FrameScaleTests
{
    static readonly Vec2[] Truth = [new(0, 0), new(180, 4), new(176, 118), new(-3, 121), new(90, 60), new(40, 25)];

    /// <summary>A photograph that shows everything 0.3 % too large, picked to 0.05 mm, and two calliper readings.</summary>
    static Sample Photograph(double scaleStd, ulong seed = 5)
    {
        var chance = new Chance(seed);
        var readings = ImmutableArray.CreateBuilder<Reading>();
        for (var i = 0; i < Truth.Length; i++)
        {
            var seen = 1.003 * Truth[i].Turned(0.2) + new Vec2(31, -12);
            readings.Add(new Reading(i, ReadingKind.Picked, $"P{i}", null, seen.X + 0.05 * chance.Normal(), 0.05) { ValueY = seen.Y + 0.05 * chance.Normal(), Frame = "photo" });
        }
        foreach (var (a, b) in new[] { (0, 1), (1, 3) })
            readings.Add(new Reading(readings.Count, ReadingKind.CentreDistance, $"P{a}", $"P{b}", Truth[a].DistanceTo(Truth[b]) + 0.02 * chance.Normal(), 0.02));
        return new Sample("photo", "", [.. Truth.Select((_, i) => new Feature($"P{i}", FeatureKind.Point))], readings.ToImmutable())
        {
            Frames = scaleStd > 0 ? [new PickFrame("photo", scaleStd)] : [],
        };
    }

    [Fact]
    [Truth(Grade.Property, "points of known distances seen through a known scale, with errors of known size")]
    public void A_scale_of_its_own_gives_true_distances()
    {
        var plan = Adjust.Solve(Photograph(0.01));
        Assert.True(plan.Convergence.Converged);
        Assert.Empty(plan.Doubts.Indices);
        var scale = Assert.Single(plan.Scales).Scale;
        Assert.InRange((scale.Value - 1.003) / scale.Std, -3, 3);
        Assert.InRange(scale.Std, 0, 0.0005);
        foreach (var d in plan.Distances())
            Assert.InRange((d.Distance - Truth[d.From[1] - '0'].DistanceTo(Truth[d.To[1] - '0'])) / d.Std, -3.5, 3.5);
        // Without it photograph and calliper contradict one another.
        var fixedScale = Adjust.Solve(Photograph(0));
        Assert.Empty(fixedScale.Scales);
        Assert.False(fixedScale.Global.Passes);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "MathNet.Numerics 5.0.0, dense singular values: pseudo-inverse of the weighted Jacobian, the scale's prior a row of it")]
    public void Its_plus_minus_agree_with_the_pseudo_inverse()
    {
        var plan = Adjust.Solve(Photograph(0.01), searchMirrors: false);
        var (solver, layout) = (plan.Solver, plan.Solver.Layout);
        solver.Equations.Linearise(plan.Fit.X, new double[solver.Weights.Length]);
        var dense = Matrix<double>.Build.Dense(solver.Weights.Length, layout.Count);
        for (var r = 0; r < dense.RowCount; r++)
        {
            var (columns, values) = (solver.Jacobian.ColumnsOf(r).ToArray(), solver.Jacobian.ValuesOf(r).ToArray());
            for (var k = 0; k < columns.Length; k++) dense[r, columns[k]] = values[k] * Math.Sqrt(solver.Weights[r]);
        }
        var svd = dense.Svd();
        var rank = svd.S.Count(s => s > 1e-9 * svd.S[0]);
        Assert.Equal(layout.Count - 3, rank);
        var v = svd.VT.Transpose().SubMatrix(0, layout.Count, 0, rank);
        var covariance = v * Matrix<double>.Build.Diagonal(rank, rank, k => 1 / (svd.S[k] * svd.S[k])) * v.Transpose();
        foreach (var d in plan.Distances())
        {
            var (a, b) = (layout.First(layout.IndexOf(d.From)), layout.First(layout.IndexOf(d.To)));
            var along = (plan.Of(d.To).At - plan.Of(d.From).At).Unit;
            var g = Vector<double>.Build.Dense(layout.Count);
            (g[a], g[a + 1], g[b], g[b + 1]) = (-along.X, -along.Y, along.X, along.Y);
            Assert.Equal(1, d.Std / Math.Sqrt(g * covariance * g), 7);
        }
        var scale = layout.FrameAt(0) + 3;
        Assert.Equal(1, plan.Scales[0].Scale.Std * layout.Lever / Math.Sqrt(covariance[scale, scale]), 7);
    }

    [Fact]
    [Truth(Grade.Property, "central differences; motions of the whole part change no pick")]
    public void Derivatives_and_datum_are_those_of_a_scaled_frame()
    {
        var solver = new Solver(Photograph(0.01));
        var x = Adjust.Solve(Photograph(0.01), searchMirrors: false).Fit.X;
        var rows = solver.Weights.Length;
        var (above, below) = (new double[rows], new double[rows]);
        solver.Equations.Linearise(x, new double[rows]);
        for (var u = 0; u < x.Length; u++)
        {
            var (up, down) = ((double[])x.Clone(), (double[])x.Clone());
            (up[u], down[u]) = (x[u] + 1e-4, x[u] - 1e-4);
            solver.Evaluate(up, above);
            solver.Evaluate(down, below);
            for (var r = 0; r < rows; r++)
            {
                var k = solver.Jacobian.ColumnsOf(r).IndexOf(u);
                Assert.Equal((above[r] - below[r]) / 2e-4, k < 0 ? 0 : solver.Jacobian.ValuesOf(r)[k], 6);
            }
        }
        foreach (var motion in solver.Layout.DatumMotions(x, new Vec2(80, 50)))
            for (var r = 0; r < rows; r++) Assert.Equal(0, solver.Jacobian.Dot(r, motion), 9);
    }

    [Theory, InlineData(-0.01), InlineData(0.2), InlineData(double.NaN)]
    [Truth(Grade.Property, "a scale is a share of one, known to some part of it")]
    public void A_scale_that_cannot_be_is_refused(double std)
    {
        var sample = Photograph(0) with { Frames = [new PickFrame("photo", std)] };
        Assert.Contains("photo: a scale within", Assert.Throws<RefusedException>(() => Adjust.Solve(sample)).Message, StringComparison.Ordinal);
    }
}
