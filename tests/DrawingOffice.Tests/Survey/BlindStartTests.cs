using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey;

[Truth(Grade.Property, "the least sum of squares does not depend on where the search starts")]
public class BlindStartTests(ITestOutputHelper output)
{
    [Fact]
    public void From_nothing_the_same_shape_is_found_as_from_a_sketch()
    {
        const int plates = 100;
        var failed = new List<string>();
        for (var seed = 0; seed < plates; seed++)
        {
            var chance = new Chance((ulong)seed);
            var (points, ties) = (5 + chance.Below(20), 3 + chance.Below(3));
            var sample = Simulated.Plate(points, ties, chance);
            var sketched = Adjust.Solve(sample, searchMirrors: false).WeightedSumOfSquares;
            var blind = Adjust.Solve(sample with { Features = [.. sample.Features.Select(f => f with { Sketch = null })] }, searchMirrors: false).WeightedSumOfSquares;
            if (Math.Abs(blind - sketched) > 1e-6 * (1 + sketched)) failed.Add($"seed {seed} ({points} holes, {ties} ties): {sketched:0.###} from the sketch, {blind:0.###} from nothing");
        }
        output.WriteLine($"{plates - failed.Count} of {plates} agree");
        foreach (var f in failed) output.WriteLine(f);
        Assert.True(failed.Count <= 0.02 * plates, string.Join("; ", failed));
    }
}
