namespace WitnessMark.PlanningOffice.Futures;

/// <summary>
/// Beta on [0, 1] with α = 1 + 4m, β = 5 − 4m. Its distribution function is summed once on a fine grid by Simpson's rule in
/// a variable that is level at both ends (x = (1 − cos t)/2), then inverted between grid points.
/// </summary>
sealed class PertShape
{
    const int Grid = 512;

    readonly double[] _below = new double[Grid + 1];

    public PertShape(double mode)
    {
        var (a, b) = (4 * mode, 4 * (1 - mode));
        double Density(double t)
        {
            var x = (1 - Math.Cos(t)) / 2;
            return Math.Pow(x, a) * Math.Pow(Math.Max(1 - x, 0), b) * Math.Sin(t);
        }
        const double h = Math.PI / Grid;
        for (var i = 1; i <= Grid; i++)
            _below[i] = _below[i - 1] + Density((i - 1) * h) + 4 * Density((i - 0.5) * h) + Density(i * h);
        for (var i = 1; i < Grid; i++) _below[i] /= _below[Grid];
        _below[Grid] = 1;
    }

    public double Quantile(double p)
    {
        if (p <= 0) return 0;
        if (p >= 1) return 1;
        var found = Array.BinarySearch(_below, p);
        var i = found >= 0 ? found : ~found;
        var t = i == 0 ? 0 : i - 1 + (p - _below[i - 1]) / (_below[i] - _below[i - 1]);
        return (1 - Math.Cos(t * Math.PI / Grid)) / 2;
    }
}
