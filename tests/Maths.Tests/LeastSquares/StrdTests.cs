using WitnessMark.Maths.LeastSquares;
using WitnessMark.Tests;

namespace WitnessMark.Maths.Tests.LeastSquares;

[Truth(Grade.Certified, "NIST/ITL Statistical Reference Datasets, nonlinear regression, truth/nist-strd/README.md")]
public class StrdTests(ITestOutputHelper output)
{
    public static TheoryData<string> Names => [.. StrdProblem.Names];

    [Theory, MemberData(nameof(Names))]
    public void From_the_near_start(string name) => Reaches(name, 1);

    [Theory, MemberData(nameof(Names))]
    public void From_the_far_start(string name) => Reaches(name, 0);

    void Reaches(string name, int start)
    {
        var problem = StrdProblem.Load(name);
        var normal = new NormalMatrix(problem.Jacobian, new int[problem.Certified.Length]);
        var weights = new double[problem.Jacobian.Rows];
        Array.Fill(weights, 1);
        var minimum = TrustRegion.Minimise(problem, normal, problem.Starts[start], weights, mostIterations: 5000);

        var values = Digits(problem.Certified, minimum.X);
        var std = Digits(problem.CertifiedStd, Std(problem, normal, minimum, weights));
        var sum = Digits([problem.CertifiedSum], [minimum.SumOfSquares]);
        output.WriteLine($"{name} start {start + 1}: {minimum.Iterations} steps, digits of b {values:0.0}, of s(b) {std:0.0}, of the sum {sum:0.0}; {minimum.Words}; {string.Join(" ", minimum.X)}");
        Assert.True(minimum.Converged, minimum.Words);
        Assert.True(values >= 6, $"{values:0.0} digits");
        Assert.True(std >= 4, $"{std:0.0} digits");
        Assert.True(sum >= 6, $"{sum:0.0} digits");
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
