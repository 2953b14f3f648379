namespace WitnessMark.PlanningOffice.Futures;

/// <summary>A PERT-beta figure made ready for drawing: low + range × quantile.</summary>
readonly record struct Amount(float Low, float Range, QuantileTable? Shape)
{
    public bool None => Low == 0 && Range == 0;

    /// <param name="u">Uniform in [0, 1).</param>
    public float Draw(float u) => Shape is null ? Low : Low + Range * Shape.At(u);

    public float Mean => Shape is null ? Low : Low + Range * Shape.Mean;
}

/// <summary>
/// Quantile function in a table with straight lines between: 256 equal steps, the first and last of them cut into 256 again
/// because a quantile function bends most at its ends.
/// </summary>
sealed class QuantileTable
{
    /// <summary>Worst error of a PERT-beta as a share of low to high, for u from 1/256 to 255/256.</summary>
    public const double WorstInside = 4e-3;

    /// <summary>The same beyond; largest past the last 1/65536 where the likeliest is at an end and the quantile ends upright.</summary>
    public const double WorstAtEnds = 0.06;

    /// <summary>Of the mean.</summary>
    public const double WorstMean = 3e-5;

    const int Steps = 256;

    readonly float[] _middle = new float[Steps + 1], _low = new float[Steps + 1], _high = new float[Steps + 1];

    QuantileTable(Func<double, double> quantile, double mean)
    {
        Mean = (float)mean;
        for (var i = 0; i <= Steps; i++)
        {
            _middle[i] = (float)quantile(i / (double)Steps);
            _low[i] = (float)quantile(i / (double)(Steps * Steps));
            _high[i] = (float)quantile(1 - (Steps - i) / (double)(Steps * Steps));
        }
    }

    public float Mean { get; }

    public float At(float u)
    {
        var x = u * Steps;
        var i = (int)x;
        return i == 0 ? Between(_low, x * Steps)
            : i >= Steps - 1 ? Between(_high, Math.Clamp((x - (Steps - 1)) * Steps, 0, Steps))
            : _middle[i] + (x - i) * (_middle[i + 1] - _middle[i]);
    }

    /// <summary>Share of the distribution below a value; the inverse of <see cref="At"/> by bisection.</summary>
    public float Below(float value)
    {
        float a = 0, b = 1;
        for (var i = 0; i < 24; i++)
        {
            var m = (a + b) / 2;
            if (At(m) < value) a = m;
            else b = m;
        }
        return a;
    }

    /// <param name="mode">Likeliest, as a share of the way from low to high.</param>
    public static QuantileTable Pert(double mode)
    {
        var beta = new PertShape(mode);
        return new(beta.Quantile, (1 + 4 * mode) / 6);
    }

    /// <summary>Standard normal; cut at ±4.5, which leaves out 7 in a million.</summary>
    public static QuantileTable Normal { get; } = new(p => p is > 3.4e-6 and < 1 - 3.4e-6 ? Maths.Statistics.Normal.Quantile(p) : p < 0.5 ? -4.5 : 4.5, 0);

    static float Between(float[] table, float x)
    {
        var i = Math.Min((int)x, Steps - 1);
        return table[i] + (x - i) * (table[i + 1] - table[i]);
    }
}
