namespace WitnessMark.DrawingOffice.Survey.Taking;

/// <summary>The full covariance of the unknowns, kept up to date as readings are added. Not for more than a few hundred unknowns.</summary>
sealed class Knowledge
{
    /// <summary>mm: nothing at all is known of a feature to better than this. Wide beside any part, and 1e5 times any reading's ±, which double precision carries.</summary>
    const double Unknown = 3000;

    /// <summary>Variance, mm²: what is known no better than to a centimetre is loose.</summary>
    public const double Loose = 100;

    readonly double[,] _q;
    readonly double[] _work;

    Knowledge(double[,] q) => (_q, _work) = (q, new double[q.GetLength(0)]);

    public static Knowledge Of(ITakingNetwork network)
    {
        var n = network.BlockOf.Length;
        var q = new double[n, n];
        for (var u = 0; u < n; u++) q[u, u] = Unknown * Unknown;
        var known = new Knowledge(q);
        foreach (var motion in network.Datum)
        {
            // The whole part is held: where it lies as a whole is nothing that anyone wants to know.
            int[] columns = [.. Enumerable.Range(0, n).Where(u => motion[u] != 0)];
            known.Add(new TakeRow(columns, [.. columns.Select(u => motion[u])], 1e-2));
        }
        foreach (var row in network.Given.Concat(network.Taken)) known.Add(row);
        return known;
    }

    public Knowledge Copy() => new((double[,])_q.Clone());

    /// <summary>aᵀ Q b.</summary>
    public double Between(in TakeRow a, in TakeRow b)
    {
        double sum = 0;
        for (var i = 0; i < a.Columns.Length; i++)
        {
            double part = 0;
            for (var k = 0; k < b.Columns.Length; k++) part += _q[a.Columns[i], b.Columns[k]] * b.Rates[k];
            sum += a.Rates[i] * part;
        }
        return sum;
    }

    public double Variance(in TakeRow a) => Between(a, a);

    public double Redundancy(in TakeRow a) => 1 - a.Weight * Variance(a);

    public void Add(in TakeRow a)
    {
        var n = _work.Length;
        Array.Clear(_work);
        for (var k = 0; k < a.Columns.Length; k++)
            for (var u = 0; u < n; u++) _work[u] += _q[u, a.Columns[k]] * a.Rates[k];
        double own = a.Std * a.Std;
        for (var k = 0; k < a.Columns.Length; k++) own += a.Rates[k] * _work[a.Columns[k]];
        for (var u = 0; u < n; u++)
        {
            if (_work[u] == 0) continue;
            var w = _work[u] / own;
            for (var v = 0; v < n; v++) _q[u, v] -= w * _work[v];
        }
    }
}
