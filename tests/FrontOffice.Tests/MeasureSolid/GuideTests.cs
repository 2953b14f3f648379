using WitnessMark.FrontOffice.MeasureSolid;

namespace WitnessMark.Tests.FrontOffice.MeasureSolid;

/// <summary>The worked example of docs/guide/survey-solid.md.</summary>
public class GuideTests
{
    static string Sheet()
    {
        var guide = File.ReadAllText("guide/survey-solid.md");
        var from = guide.IndexOf("```csv\n", StringComparison.Ordinal) + 7;
        return guide[from..guide.IndexOf("```", from, StringComparison.Ordinal)];
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "law of cosines in the triangle P4, P1, P5 of the example's own distances: arccos((40.02² + 30.00² − 54.00²)/(2·40.02·30.00)) = 99.94°, and 100.04° on the other side")]
    public void The_example_is_held_and_its_angle_is_that_of_its_triangles()
    {
        var result = WitnessMark.FrontOffice.MeasureSolid.MeasureSolid.Run(new(SolidFile.Read(Sheet()).Value));
        Assert.True(result.Plan.Convergence.Converged, result.Plan.Convergence.Words);
        Assert.Equal((0, 0), (result.Plan.LooseFreedoms, result.Plan.Doubts.Indices.Length));
        var angle = result.Part!.Pairs.Single().Angle!.Value;
        Assert.InRange(angle.Value * 180 / Math.PI, 99.7, 100.3);
        Assert.InRange(angle.Expanded * 180 / Math.PI, 0.01, 0.3);
        Assert.Equal("A", result.Part.Heights[0].Face);
        Assert.All(result.Part.Heights, h => Assert.InRange(h.Height!.Value.Value, 10, 32));
    }

    [Fact]
    [Truth(Grade.Property, "the guide lists every kind of reading that the sheet takes")]
    public void Every_kind_of_reading_stands_in_the_guide()
    {
        var guide = File.ReadAllText("guide/survey-solid.md");
        Assert.All(SolidRule.All, r => Assert.Contains(r.Words, guide));
    }
}
