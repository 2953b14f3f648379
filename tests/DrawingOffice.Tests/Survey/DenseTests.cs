using MathNet.Numerics.LinearAlgebra;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey;

[Truth(Grade.SecondImplementation, "MathNet.Numerics 5.0.0, dense singular values: pseudo-inverse of the weighted Jacobian")]
public class DenseTests(ITestOutputHelper output)
{
    public static TheoryData<int, int, ulong> PlatesToSolve => new() { { 6, 3, 1 }, { 12, 4, 2 }, { 25, 4, 3 }, { 25, 6, 4 }, { 40, 5, 5 } };

    [Theory, MemberData(nameof(PlatesToSolve))]
    public void A_plate_agrees_with_the_pseudo_inverse(int points, int ties, ulong seed) =>
        Agrees(Adjust.Solve(Simulated.Plate(points, ties, new Chance(seed)), searchMirrors: false));

    [Theory, InlineData(0, 2), InlineData(1, 1), InlineData(2, 0)]
    public void A_hole_with_few_ties_leaves_as_many_motions(int left, int free)
    {
        var sample = Simulated.Plate(12, 5, new Chance(6));
        var ties = sample.Readings.Where(r => r.To is not null && (r.From == "H5" || r.To == "H5")).Skip(left).ToHashSet();
        var plan = Adjust.Solve(sample with { Readings = [.. sample.Readings.Where(r => !ties.Contains(r)).Select((r, i) => r with { Index = i })] }, searchMirrors: false);
        Assert.Equal(free, plan.LooseFreedoms);
        Agrees(plan);
    }

    [Fact]
    public void A_loose_hole_agrees_with_the_pseudo_inverse() => Agrees(Adjust.Solve(Plates.Load("plate-03-loose-hole").Sample, searchMirrors: false));

    void Agrees(Plan plan)
    {
        Assert.True(plan.Convergence.Converged);
        var (covariance, free) = PseudoInverse(plan);
        Assert.Equal(free.ColumnCount, plan.DatumFreedoms + plan.LooseFreedoms);
        var layout = plan.Solver.Layout;
        double worst = 0;
        var places = Enumerable.Range(0, plan.Features.Length).Where(layout.HasPlace).ToArray();
        foreach (var a in places)
            foreach (var b in places.Where(b => b > a))
            {
                var along = (plan.Features[b].At - plan.Features[a].At).Unit;
                var g = Vector<double>.Build.Dense(layout.Count);
                (g[layout.First(a)], g[layout.First(a) + 1]) = (-along.X, -along.Y);
                (g[layout.First(b)], g[layout.First(b) + 1]) = (along.X, along.Y);
                var determined = (free.Transpose() * g).L2Norm() < 1e-7;
                var got = plan.Distance(plan.Features[a].Id, plan.Features[b].Id);
                Assert.Equal(determined, got is not null);
                if (determined) worst = Math.Max(worst, Math.Abs(got!.Value.Std / Math.Sqrt(g * covariance * g) - 1));
            }
        output.WriteLine($"largest relative difference of ±: {worst:0.0e0}");
        Assert.InRange(worst, 0, 1e-7);
    }

    /// <summary>Of the weighted Jacobian at the solution: V S⁻² Vᵀ over what the readings see, and the columns of V that they do not.</summary>
    static (Matrix<double> Covariance, Matrix<double> Free) PseudoInverse(Plan plan)
    {
        var svd = DenseRows.Of(plan).Weighted.Svd();
        // Singular values of the plates here are within 1e4 of each other or nil.
        var rank = svd.S.Count(s => s > 1e-9 * svd.S[0]);
        var v = svd.VT.Transpose();
        var seen = v.SubMatrix(0, v.RowCount, 0, rank);
        return (seen * Matrix<double>.Build.Diagonal(rank, rank, k => 1 / (svd.S[k] * svd.S[k])) * seen.Transpose(),
            v.SubMatrix(0, v.RowCount, rank, v.ColumnCount - rank));
    }
}
