using MathNet.Numerics.LinearAlgebra;
using WitnessMark.Maths.LeastSquares;

namespace WitnessMark.Maths.Tests.LeastSquares;

/// <summary>Matrices to solve twice: by our sparse code and by a dense library.</summary>
static class RandomRows
{
    /// <summary>Each row touches one to five columns; every column is touched.</summary>
    public static SparseRows Sparse(int rows, int columns, Chance chance)
    {
        var pattern = Enumerable.Range(0, rows)
            .Select(r => Enumerable.Range(0, 1 + chance.Below(5)).Select(_ => chance.Below(columns)).Append(r % columns).Distinct().ToArray()).ToArray();
        var j = new SparseRows(pattern, columns);
        for (var r = 0; r < rows; r++)
            foreach (ref var v in j.ValuesOf(r)) v = chance.Normal();
        return j;
    }

    /// <summary>Dense in its pattern, with singular values spread evenly (by logarithm) from 1 down to 1/condition.</summary>
    public static SparseRows WithCondition(int rows, int columns, double condition, Chance chance)
    {
        var u = Orthonormal(rows, columns, chance);
        var v = Orthonormal(columns, columns, chance);
        var s = Matrix<double>.Build.Diagonal(columns, columns, k => Math.Pow(condition, -k / (columns - 1.0)));
        return From(u * s * v.Transpose());
    }

    public static Matrix<double> Dense(SparseRows j, ReadOnlySpan<double> weights)
    {
        var dense = Matrix<double>.Build.Dense(j.Rows, j.Columns);
        for (var r = 0; r < j.Rows; r++)
            for (var k = 0; k < j.ColumnsOf(r).Length; k++) dense[r, j.ColumnsOf(r)[k]] = Math.Sqrt(weights[r]) * j.ValuesOf(r)[k];
        return dense;
    }

    static SparseRows From(Matrix<double> dense)
    {
        var j = new SparseRows([.. Enumerable.Range(0, dense.RowCount).Select(_ => Enumerable.Range(0, dense.ColumnCount).ToArray())], dense.ColumnCount);
        for (var r = 0; r < j.Rows; r++) dense.Row(r).AsArray().CopyTo(j.ValuesOf(r));
        return j;
    }

    static Matrix<double> Orthonormal(int rows, int columns, Chance chance) =>
        Matrix<double>.Build.Dense(rows, columns, (_, _) => chance.Normal()).QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin).Q;
}
