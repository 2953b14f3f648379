using System.Numerics;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Weights;

/// <summary>A symmetric matrix of covariances, mm².</summary>
sealed class Spread(int size, double[] entries)
{
    public int Size => size;

    public double[] Entries => entries;

    public double Covariance(int[] columnsA, double[] ratesA, int[] columnsB, double[] ratesB)
    {
        double sum = 0;
        for (var i = 0; i < columnsA.Length; i++)
        {
            var row = columnsA[i] * size;
            double inner = 0;
            for (var k = 0; k < columnsB.Length; k++) inner += entries[row + columnsB[k]] * ratesB[k];
            sum += ratesA[i] * inner;
        }
        return sum;
    }

    /// <summary>P g.</summary>
    public double[] Times(int[] columns, double[] rates)
    {
        var result = new double[size];
        for (var k = 0; k < columns.Length; k++)
        {
            var (row, rate) = (columns[k] * size, rates[k]);
            for (var u = 0; u < size; u++) result[u] += rate * entries[row + u];
        }
        return result;
    }
}

/// <summary>
/// Where the meant shape is believed to be: the survey's unknowns with the covariance of readings and making together,
/// conditioned on everything accepted so far. A scratch object of the search; it never leaves it.
/// </summary>
sealed class Belief
{
    Belief(double[] x, Spread spread, Spread root) => (X, Now, Root) = (x, spread, root);

    public double[] X { get; }

    public Spread Now { get; }

    /// <summary>Before anything was accepted.</summary>
    public Spread Root { get; }

    public static Belief Of(double[] x, Spread spread) => new((double[])x.Clone(), new(spread.Size, (double[])spread.Entries.Clone()), spread);

    public Belief Copy() => new((double[])X.Clone(), new(Now.Size, (double[])Now.Entries.Clone()), Root);

    /// <summary>Makes value + g·x hold: exact conditioning of a Gaussian, one rank.</summary>
    /// <param name="value">Of the condition at <see cref="X"/>.</param>
    public void Hold(Slope slope, double value, double variance)
    {
        var gain = Now.Times(slope.Columns, slope.Rates);
        var (n, entries) = (Now.Size, Now.Entries);
        for (var u = 0; u < n; u++)
        {
            var share = gain[u] / variance;
            if (share == 0) continue;
            X[u] -= share * value;
            Subtract(entries.AsSpan(u * n, n), share, gain);
        }
    }

    /// <summary>row −= share · gain. This is where the search spends its time, so it goes a register at a time.</summary>
    static void Subtract(Span<double> row, double share, ReadOnlySpan<double> gain)
    {
        var width = Vector<double>.Count;
        var (by, v) = (new Vector<double>(share), 0);
        for (; v <= row.Length - width; v += width)
            (new Vector<double>(row[v..]) - by * new Vector<double>(gain[v..])).CopyTo(row[v..]);
        for (; v < row.Length; v++) row[v] -= share * gain[v];
    }
}
