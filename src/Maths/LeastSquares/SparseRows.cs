namespace WitnessMark.Maths.LeastSquares;

/// <summary>
/// A tall sparse matrix held by rows: which columns each row touches is fixed, the values are filled in anew at each evaluation.
/// A column may stand only once in a row.
/// </summary>
public sealed class SparseRows
{
    readonly int[] _start;
    readonly int[] _columns;
    readonly double[] _values;

    public SparseRows(IReadOnlyList<int[]> pattern, int columns)
    {
        Rows = pattern.Count;
        Columns = columns;
        _start = new int[Rows + 1];
        for (var r = 0; r < Rows; r++) _start[r + 1] = _start[r] + pattern[r].Length;
        _columns = new int[_start[Rows]];
        _values = new double[_start[Rows]];
        for (var r = 0; r < Rows; r++) pattern[r].CopyTo(_columns, _start[r]);
    }

    public int Rows { get; }

    public int Columns { get; }

    public ReadOnlySpan<int> ColumnsOf(int row) => _columns.AsSpan(_start[row], _start[row + 1] - _start[row]);

    public Span<double> ValuesOf(int row) => _values.AsSpan(_start[row], _start[row + 1] - _start[row]);

    /// <summary>Row · x.</summary>
    public double Dot(int row, ReadOnlySpan<double> x)
    {
        var columns = ColumnsOf(row);
        var values = ValuesOf(row);
        double sum = 0;
        for (var k = 0; k < columns.Length; k++) sum += values[k] * x[columns[k]];
        return sum;
    }

    /// <summary>y += factor · rowᵀ.</summary>
    public void AddTo(Span<double> y, int row, double factor)
    {
        var columns = ColumnsOf(row);
        var values = ValuesOf(row);
        for (var k = 0; k < columns.Length; k++) y[columns[k]] += factor * values[k];
    }
}
