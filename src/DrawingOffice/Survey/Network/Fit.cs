namespace WitnessMark.DrawingOffice.Survey.Network;

/// <summary>One adjustment: where the unknowns came to rest, under which weights, and what may still move.</summary>
/// <param name="X">The unknowns.</param>
/// <param name="Weights">1/σ² of each row; 0 leaves the row out.</param>
/// <param name="Free">Orthonormal motions, beyond the datum's three, that change no reading.</param>
/// <param name="Datum">Orthonormal motions of the whole plan (three; two when everything sits in one point).</param>
/// <param name="Held">Added to the diagonal to make the equations regular: one unknown held for each motion of the two lists.
/// Quantities that no such motion changes do not depend on which unknowns are held.</param>
sealed record Fit(double[] X, double[] Weights, double SumOfSquares, Convergence Convergence, double[][] Free, double[][] Datum, double[] Held)
{
    /// <summary>By row, what is added to the reading so that it stands for a worn one; null where no row has wear.</summary>
    public double[]? Shift { get; init; }

    /// <summary>The same before its ± were widened for rows that bound one thing together; null where no row has wear. Tests look here.</summary>
    public Fit? Narrow { get; init; }

    /// <summary>Surplus readings that wear has taken: rows that bound from one side check less than whole ones.</summary>
    public int Lost { get; init; }

    public int Used => Weights.Count(w => w > 0);

    public int Redundancy => Used - (X.Length - Datum.Length - Free.Length) - Lost;
}
