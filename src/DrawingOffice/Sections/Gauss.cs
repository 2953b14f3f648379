namespace WitnessMark.DrawingOffice.Sections;

/// <summary>
/// Gauss-Legendre with eight points: exact for polynomials to degree 15 (all straight sides), and to rounding for the sines and cosines
/// of an arc of at most 45°, into which longer arcs are cut.
/// </summary>
static class Gauss
{
    static readonly double[] Nodes = [0.1834346424956498, 0.5255324099163290, 0.7966664774136267, 0.9602898564975363];
    static readonly double[] Weights = [0.3626837833783620, 0.3137066458778873, 0.2223810344533745, 0.1012285362903763];

    /// <summary>∫ over [0, 1] of a side's share.</summary>
    /// <param name="sweep">Of the arc, radians; 0 for a straight side.</param>
    public static double Sum(double sweep, Func<double, double> f)
    {
        var pieces = Math.Max(1, (int)Math.Ceiling(Math.Abs(sweep) / (Math.PI / 4) - 1e-9));
        var sum = 0.0;
        for (var p = 0; p < pieces; p++)
            for (var i = 0; i < Nodes.Length; i++)
            {
                var (low, high) = ((p + (1 - Nodes[i]) / 2) / pieces, (p + (1 + Nodes[i]) / 2) / pieces);
                sum += Weights[i] * (f(low) + f(high));
            }
        return sum / (2 * pieces);
    }
}
