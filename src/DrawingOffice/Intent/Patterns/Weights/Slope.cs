using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Weights;

/// <summary>A condition made linear: value at a place and its derivatives by column.</summary>
/// <param name="Before">Variance of the value before anything was accepted, for telling what has since become certain.</param>
sealed record Slope(Tie Tie, double Value, int[] Columns, double[] Rates, double Before)
{
    /// <summary>mm. Cause: a thousandth lets central differences keep ten digits, and is far below any ±.</summary>
    const double Step = 1e-3;

    public static Slope Of(Tie condition, Shape shape, Belief belief)
    {
        int[] columns = [.. condition.Touched.SelectMany(shape.Columns).Distinct()];
        var rates = new double[columns.Length];
        var x = (double[])belief.X.Clone();
        for (var k = 0; k < columns.Length; k++)
        {
            var kept = x[columns[k]];
            x[columns[k]] = kept + Step;
            var up = condition.Of(x);
            x[columns[k]] = kept - Step;
            rates[k] = (up - condition.Of(x)) / (2 * Step);
            x[columns[k]] = kept;
        }
        return new(condition, condition.Of(x), columns, rates, belief.Root.Covariance(columns, rates, columns, rates));
    }

    /// <summary>The value at another place, from the slope.</summary>
    public double At(double[] from, double[] to)
    {
        var value = Value;
        for (var k = 0; k < Columns.Length; k++) value += Rates[k] * (to[Columns[k]] - from[Columns[k]]);
        return value;
    }
}
