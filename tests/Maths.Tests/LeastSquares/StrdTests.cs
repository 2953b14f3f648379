using WitnessMark.Maths.LeastSquares;
using WitnessMark.Tests;

namespace WitnessMark.Maths.Tests.LeastSquares;

[Truth(Grade.Certified, "NIST/ITL Statistical Reference Datasets, nonlinear regression, truth/nist-strd/README.md")]
public class StrdTests(ITestOutputHelper output)
{
    const int MostSteps = 5000;

    public static TheoryData<string> Names => [.. StrdProblem.Names];

    public static TheoryData<string> WithinReach => [.. StrdProblem.Names.Except(["BoxBOD", "MGH10"])];

    [Theory, MemberData(nameof(Names))]
    public void The_near_start_leads_to_the_certified_values(string name) => Reaches(name, 1);

    [Theory, MemberData(nameof(WithinReach))]
    public void The_far_start_leads_to_the_certified_values(string name) => Reaches(name, 0);

    [Fact]
    public void From_afar_BoxBOD_ends_on_the_flat_and_its_uncertainty_says_so()
    {
        // The first step carries b2 to where exp(−b2 x) is nil for every x: the model is then the constant b1, whose best is the mean, and nothing pulls b2 back.
        var (problem, normal, weights, minimum) = Run("BoxBOD", 0);
        Assert.Equal(172.5, minimum.X[0], 1e-9);
        Assert.True(Std(problem, normal, minimum, weights)[1] > 1e6 * Math.Abs(minimum.X[1]));
    }

    [Fact]
    public void From_afar_MGH10_does_not_settle_and_says_so()
    {
        // b1 has to grow by seven powers of ten along a curved valley while its scale remembers the steepest place (Moré's running maximum): 500,000 steps do not do it either.
        var (_, _, _, minimum) = Run("MGH10", 0);
        Assert.False(minimum.Converged);
        Assert.Contains($"not settled after {MostSteps} steps", minimum.Words, StringComparison.Ordinal);
    }

    static (StrdProblem Problem, NormalMatrix Normal, double[] Weights, Minimum Minimum) Run(string name, int start)
    {
        var problem = StrdProblem.Load(name);
        var normal = new NormalMatrix(problem.Jacobian, new int[problem.Certified.Length]);
        var weights = new double[problem.Jacobian.Rows];
        Array.Fill(weights, 1);
        return (problem, normal, weights, TrustRegion.Minimise(problem, normal, problem.Starts[start], weights, MostSteps));
    }

    void Reaches(string name, int start)
    {
        var (problem, normal, weights, minimum) = Run(name, start);
        var values = Digits(problem.Certified, minimum.X);
        var std = Digits(problem.CertifiedStd, Std(problem, normal, minimum, weights));
        var sum = Digits([problem.CertifiedSum], [minimum.SumOfSquares]);
        output.WriteLine($"{name} start {start + 1}: {minimum.Iterations} steps, digits of b {values:0.0}, of s(b) {std:0.0}, of the sum {sum:0.0}");
        Assert.True(minimum.Converged, minimum.Words);
        Assert.True(values >= 6, $"parameters: {values:0.0} digits");
        Assert.True(std >= 4, $"standard deviations: {std:0.0} digits");
        Assert.True(sum >= 6, $"sum of squares: {sum:0.0} digits");
    }

    static double[] Std(StrdProblem problem, NormalMatrix normal, Minimum minimum, double[] weights)
    {
        problem.Linearise(minimum.X, new double[weights.Length]);
        normal.Assemble(weights);
        Assert.True(normal.Factor(new double[normal.Size]));
        var variance = minimum.SumOfSquares / problem.Freedom;
        return [.. Enumerable.Range(0, normal.Size).Select(u => Math.Sqrt(variance * normal.Quadratic([u], [1])))];
    }

    /// <summary>Correct digits of the worst value: −log₁₀ of its relative error, at most the 11 that are certified.</summary>
    static double Digits(double[] certified, double[] got) =>
        certified.Zip(got, (c, g) => Math.Min(11, -Math.Log10(Math.Abs(g - c) / Math.Abs(c) + 1e-300))).Min();
}
