namespace WitnessMark.DrawingOffice.Intent.Wear;

/// <summary>Logarithm of a running sum of exponentials; neither overflows nor underflows.</summary>
readonly record struct LogSum(double Largest, double Scaled)
{
    public static LogSum Empty => new(double.NegativeInfinity, 0);

    public double Value => Largest + Math.Log(Scaled);

    public LogSum With(double log) =>
        double.IsNegativeInfinity(log) ? this
        : log <= Largest ? this with { Scaled = Scaled + Math.Exp(log - Largest) }
        : new LogSum(log, Scaled * Math.Exp(Largest - log) + 1);

    public static double Of(IEnumerable<double> logs) => logs.Aggregate(Empty, (sum, log) => sum.With(log)).Value;
}
