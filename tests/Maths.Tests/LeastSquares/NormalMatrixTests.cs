using CsCheck;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;
using WitnessMark.Maths.LeastSquares;
using WitnessMark.Tests;

namespace WitnessMark.Maths.Tests.LeastSquares;

[Truth(Grade.SecondImplementation, "MathNet.Numerics 5.0.0, dense QR and SVD")]
public class NormalMatrixTests(ITestOutputHelper output)
{
    [Fact]
    public void Solutions_and_variances_agree_with_a_dense_QR() => Gen.Int[0, 1_000_000].Sample(seed =>
    {
        var chance = new Chance((ulong)seed);
        var n = 1 + chance.Below(40);
        var j = RandomRows.Sparse(n + chance.Below(3 * n + 1), n, chance);
        double[] weights = [.. Enumerable.Range(0, j.Rows).Select(_ => chance.Below(8) == 0 ? 0 : Math.Pow(10, chance.Uniform(-2, 2)))];
        double[] added = [.. Enumerable.Range(0, n).Select(_ => chance.Uniform(0.01, 1))];
        double[] b = [.. Enumerable.Range(0, n).Select(_ => chance.Normal())];
        var normal = new NormalMatrix(j, Blocks(n, chance));
        normal.Assemble(weights);
        Assert.True(normal.Factor(added));
        var x = new double[n];
        normal.Solve(b, x);

        var tall = RandomRows.Dense(j, weights).Stack(Matrix<double>.Build.Diagonal(n, n, k => Math.Sqrt(added[k])));
        var r = tall.QR(QRMethod.Thin).R;
        var y = r.Solve(r.Transpose().Solve(Vector<double>.Build.Dense(b)));
        var slack = 1e-14 * Math.Pow(tall.ConditionNumber(), 2);
        Assert.True((Vector<double>.Build.Dense(x) - y).L2Norm() <= slack * y.L2Norm(), $"seed {seed}: {x[0]:R} against {y[0]:R}");

        int[] columns = n == 1 ? [0] : [0, 1 + chance.Below(n - 1)];
        double[] g = [.. columns.Select(_ => chance.Normal())];
        var full = Vector<double>.Build.Dense(n);
        for (var k = 0; k < columns.Length; k++) full[columns[k]] = g[k];
        var variance = Math.Pow(r.Transpose().Solve(full).L2Norm(), 2);
        Assert.InRange(normal.Quadratic(columns, g), variance * (1 - slack), variance * (1 + slack));

        var inverse = normal.Inverse();
        var row = chance.Below(j.Rows);
        foreach (var u in j.ColumnsOf(row))
            foreach (var v in j.ColumnsOf(row)) Assert.Equal(r.Solve(r.Transpose().Solve(Unit(n, v)))[u], inverse.Entry(u, v), slack / added.Min());
    }, iter: 300, threads: 1);

    [Fact]
    public void Standard_uncertainties_lose_no_more_than_the_square_of_the_condition_says()
    {
        // The bound in NormalMatrix's remarks, 1e-16·cond², with a slack of 3.
        double worst = 0;
        for (var power = 0.0; power <= 7; power += 0.5)
            for (ulong seed = 0; seed < 20; seed++)
            {
                var condition = Math.Pow(10, power);
                var error = StdError(RandomRows.WithCondition(40, 15, condition, new Chance(seed)));
                worst = Math.Max(worst, error / (1e-16 * condition * condition + 1e-15));
                Assert.True(error <= 3 * (1e-16 * condition * condition + 1e-15), $"cond {condition:0e0}: relative error {error:0.0e0}");
            }
        output.WriteLine($"largest relative error over 1e-16·cond² + 1e-15: {worst:0.00}");
    }

    /// <summary>Largest relative error of the standard uncertainties, the truth from the singular values (whose own error is 1e-16·cond).</summary>
    static double StdError(SparseRows j)
    {
        var n = j.Columns;
        var weights = Enumerable.Repeat(1.0, j.Rows).ToArray();
        var normal = new NormalMatrix(j, Enumerable.Range(0, n).ToArray());
        normal.Assemble(weights);
        Assert.True(normal.Factor(new double[n]));
        var svd = RandomRows.Dense(j, weights).Svd();
        return Enumerable.Range(0, n).Max(u =>
        {
            var truth = Math.Sqrt(Enumerable.Range(0, n).Sum(k => Math.Pow(svd.VT[k, u] / svd.S[k], 2)));
            return Math.Abs(Math.Sqrt(normal.Quadratic([u], [1])) / truth - 1);
        });
    }

    [Fact]
    [Truth(Grade.Property, "a tree has a perfect elimination order: leaves first, no fill (Rose 1970)")]
    public void A_tree_fills_in_nothing() => Gen.Int[0, 1_000_000].Sample(seed =>
    {
        var chance = new Chance((ulong)seed);
        var n = 2 + chance.Below(200);
        var rows = new SparseRows([.. Enumerable.Range(1, n - 1).Select(k => new[] { k, chance.Below(k) })], n);
        Assert.Equal(n - 1, new NormalMatrix(rows, Enumerable.Range(0, n).ToArray()).FactorEntries);
    }, iter: 100, threads: 1);

    [Fact]
    [Truth(Grade.Property, "row by row a k × k grid fills its band of k")]
    public void A_grid_fills_in_far_less_than_row_by_row()
    {
        const int k = 20;
        var across = from i in Enumerable.Range(0, k) from c in Enumerable.Range(0, k - 1) select new[] { k * i + c, k * i + c + 1 };
        var down = from i in Enumerable.Range(0, k - 1) from c in Enumerable.Range(0, k) select new[] { k * i + c, k * (i + 1) + c };
        var normal = new NormalMatrix(new SparseRows([.. across, .. down], k * k), Enumerable.Range(0, k * k).ToArray());
        output.WriteLine($"{normal.FactorEntries} entries against a band of {k * k * k}");
        Assert.True(normal.FactorEntries < 0.5 * k * k * k);
    }

    static Vector<double> Unit(int n, int k) => Vector<double>.Build.Dense(n, i => i == k ? 1 : 0);

    /// <summary>Unknowns grouped into blocks of one to three.</summary>
    static int[] Blocks(int n, Chance chance)
    {
        var blocks = new int[n];
        for (var u = 1; u < n; u++) blocks[u] = blocks[u - 1] + (chance.Below(3) > 0 ? 1 : 0);
        return blocks;
    }
}
