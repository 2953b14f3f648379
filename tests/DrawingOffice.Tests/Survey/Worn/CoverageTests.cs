using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey.Worn;

[Truth(Grade.Property, "simulation: plates of known made sizes, rusted at every place by chance")]
public class CoverageTests(ITestOutputHelper output)
{
    const int Plates = 150;

    /// <summary>Mean of made size found − made size over its ±, and the share of made sizes inside two standard deviations.</summary>
    static (double Bias, double Inside, double Std, int Accused) Count(double scale, bool told)
    {
        double bias = 0, std = 0;
        var (inside, accused) = (0, 0);
        for (var i = 0; i < Plates; i++)
        {
            var plan = Adjust.Solve(WornPlates.Rusted(new Chance(700 + (ulong)i), scale, told), searchMirrors: false);
            Assert.True(plan.Convergence.Converged, plan.Convergence.Words);
            if (!plan.Doubts.Indices.IsEmpty) accused++;
            foreach (var (from, to, made) in WornPlates.Across)
            {
                var got = plan.Quantity(ReadingKind.AcrossEdges, from, to)!.Value;
                (bias, std) = (bias + got.Value - made, std + got.Std);
                if (Math.Abs(got.Value - made) <= 2 * got.Std) inside++;
            }
        }
        var n = Plates * WornPlates.Across.Length;
        return (bias / n, inside / (double)n, std / n, accused);
    }

    [Theory, InlineData(0.1), InlineData(0.5)]
    public void Told_of_the_rust_the_made_size_is_found_within_its_plus_minus(double scale)
    {
        var (bias, inside, std, accused) = Count(scale, told: true);
        output.WriteLine($"scale {scale}: mean error {bias:0.000} mm, mean standard uncertainty {std:0.000} mm, inside two of them {inside:0.000}, plates accused {accused} of {Plates}");
        // Three standard deviations of a mean of that many.
        Assert.InRange(bias, -3 * std / Math.Sqrt(2 * Plates), 3 * std / Math.Sqrt(2 * Plates));
        Assert.InRange(inside, 0.91, 0.99);
        Assert.InRange(accused, 0, 15);
    }

    [Fact]
    public void Not_told_of_it_the_made_size_comes_out_short()
    {
        var (bias, inside, std, _) = Count(0.5, told: false);
        output.WriteLine($"not told: mean error {bias:0.000} mm, mean standard uncertainty {std:0.000} mm, inside two of them {inside:0.000}");
        Assert.InRange(bias, -1.2, -0.8);
        Assert.InRange(inside, 0, 0.05);
    }
}
