namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>The derivatives of one equation, added up by column. The default one takes nothing: for values alone.</summary>
readonly ref struct Derivatives(ReadOnlySpan<int> columns, Span<double> values)
{
    readonly ReadOnlySpan<int> _columns = columns;
    readonly Span<double> _values = values;

    public bool Idle => _columns.IsEmpty;

    public void Clear() => _values.Clear();

    public void Add(int column, double rate)
    {
        for (var k = 0; k < _columns.Length; k++)
            if (_columns[k] == column)
            {
                _values[k] += rate;
                return;
            }
    }
}
