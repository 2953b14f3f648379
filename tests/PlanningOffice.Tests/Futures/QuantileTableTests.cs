using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Futures;

/// <summary>The stated worst errors hold, against distribution functions that have a closed form.</summary>
public sealed class QuantileTableTests
{
    public static TheoryData<double, double[]> Shapes => new()
    {
        // F(x) by rising powers: 1 − (1 − x)⁵, 4th-power ones from the binomial sum, x⁵.
        { 0, [0, 5, -10, 10, -5, 1] },
        { 0.25, [0, 0, 10, -20, 15, -4] },
        { 0.5, [0, 0, 0, 10, -15, 6] },
        { 0.75, [0, 0, 0, 0, 5, -4] },
        { 1, [0, 0, 0, 0, 0, 1] },
    };

    [Theory]
    [MemberData(nameof(Shapes))]
    [Truth(Grade.Published, "incomplete beta of whole shapes is a polynomial: I(a, b) = Σ C(5, j) xʲ(1 − x)⁵⁻ʲ, j ≥ a (Abramowitz and Stegun 26.5.24 with a + b = 6)")]
    public void Drawn_quantiles_keep_within_the_stated_error(double mode, double[] powers)
    {
        var table = QuantileTable.Pert(mode);
        double F(double x) => powers.Reverse().Aggregate(0.0, (sum, c) => sum * x + c);
        double Exact(double u)
        {
            double a = 0, b = 1;
            for (var i = 0; i < 60; i++)
                if (F((a + b) / 2) < u) a = (a + b) / 2;
                else b = (a + b) / 2;
            return a;
        }
        double middle = 0, ends = 0, sum = 0;
        const int n = 1 << 18;
        for (var i = 0; i < n; i++)
        {
            var u = (i + 0.5) / n;
            var x = table.At((float)u);
            sum += x;
            if (i % 37 != 0 && u is > 0.0001 and < 0.9999) continue;
            var error = Math.Abs(x - Exact((float)u));
            if (u is > 1.0 / 256 and < 255.0 / 256) middle = Math.Max(middle, error);
            else ends = Math.Max(ends, error);
        }
        Assert.True(middle < QuantileTable.WorstInside && ends < QuantileTable.WorstAtEnds && Math.Abs(sum / n - (1 + 4 * mode) / 6) < QuantileTable.WorstMean, $"{middle} {ends} {sum / n - (1 + 4 * mode) / 6}");
    }
}
