namespace WitnessMark.Maths.LeastSquares;

/// <summary>Some entries of the inverse of a sparse symmetric matrix: the diagonal, and those pairs of unknowns that meet in one row or one block (and a few more).</summary>
public sealed class SelectedInverse
{
    readonly int[] _place;
    readonly int[] _columnStart;
    readonly int[] _columnRows;
    readonly double[] _diagonal;
    readonly double[] _lower;

    internal SelectedInverse(int[] place, int[] columnStart, int[] columnRows, double[] diagonal, double[] lower) =>
        (_place, _columnStart, _columnRows, _diagonal, _lower) = (place, columnStart, columnRows, diagonal, lower);

    /// <summary>gᵀ (inverse) g; every pair of the unknowns must meet in one row or block.</summary>
    public double Quadratic(ReadOnlySpan<int> columns, ReadOnlySpan<double> values)
    {
        double sum = 0;
        for (var i = 0; i < columns.Length; i++)
        {
            if (values[i] == 0) continue;
            sum += values[i] * values[i] * Entry(columns[i], columns[i]);
            for (var k = 0; k < i; k++)
                if (values[k] != 0) sum += 2 * values[i] * values[k] * Entry(columns[i], columns[k]);
        }
        return sum;
    }

    public double Entry(int u, int v)
    {
        var (a, b) = (_place[u], _place[v]);
        if (a == b) return _diagonal[a];
        if (a < b) (a, b) = (b, a);
        var at = Array.BinarySearch(_columnRows, _columnStart[b], _columnStart[b + 1] - _columnStart[b], a);
        return at >= 0 ? _lower[at] : throw new ArgumentException($"unknowns {u} and {v} meet in no row");
    }
}
