using WitnessMark.DrawingOffice.Transitions;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Transitions;

[Truth(Grade.Property, "one sentence that names field, value and what would be right, for each thing that cannot be made")]
public class RefusalTests
{
    const string Cone = """ "kind": "cone", "thickness": 1, "base": 100, "top": 50, "height": 80 """;
    const string Saddle = """ "kind": "saddle", "thickness": 2, "diameter": 40, "length": 150, "main": { "diameter": 60, "wall": 2 } """;
    const string Elbow = """ "kind": "elbow", "thickness": 1, "diameter": 76, "radius": 110, "angle": 90 """;
    const string Mitre = """ "kind": "mitre", "thickness": 1, "diameter": 25, "length": 100, "angle": 90 """;
    const string Duct = """ "kind": "transition", "thickness": 1, "first": { "shape": "square", "width": 100 }, "second": { "shape": "circle", "diameter": 60, "at": [0, 0, 90] } """;

    [Theory]
    [InlineData(Cone, "\"height\": 80", "\"height\": 0", "height", "more than 0")]
    [InlineData(Cone, "\"top\": 50", "\"top\": -1", "top", "give a diameter")]
    [InlineData(Cone, "\"thickness\": 1", "\"thickness\": 0", "thickness", "more than 0")]
    [InlineData(Cone, "\"thickness\": 1", "\"thickness\": 1, \"neutral\": 1.5", "neutral", "0 to 1")]
    [InlineData(Cone, "\"thickness\": 1", "\"thickness\": 1, \"colour\": 1", "colour", "known here")]
    [InlineData(Cone, "\"thickness\": 1", "\"thickness\": 1, \"seam\": { \"pieces\": 3 }", "pieces", "give 1, or 2")]
    [InlineData(Cone, "\"kind\": \"cone\"", "\"kind\": \"ball\"", "kind", "cone, transition, elbow, saddle, mitre")]
    [InlineData(Duct, "[0, 0, 90]", "[0, 0, 0]", "second end, at", "move them apart")]
    [InlineData(Duct, "[0, 0, 90]", "[0, 0, 20], \"tilt\": [60, 0]", "second end, at", "tilt them less")]
    [InlineData(Duct, "\"thickness\": 1", "\"thickness\": 1, \"error\": 1e-9", "error", "larger error")]
    [InlineData(Duct, "\"shape\": \"square\", \"width\": 100", "\"shape\": \"polygon\", \"corners\": [[50, 0], [10, 5], [0, 50], [-40, -40]]", "corner", "anticlockwise")]
    [InlineData(Duct, "\"width\": 100", "\"width\": 100, \"radius\": 60", "radius", "half the smaller side")]
    [InlineData(Saddle, "\"diameter\": 40", "\"diameter\": 64", "branch, diameter", "at most 60 mm")]
    [InlineData(Saddle, "\"length\": 150", "\"length\": 150, \"offset\": 15", "branch, diameter", "with this offset")]
    [InlineData(Saddle, "\"length\": 150", "\"length\": 150, \"angle\": 5", "angle", "10.0° to 90°")]
    [InlineData(Saddle, "\"length\": 150", "\"length\": 30", "length", "at least")]
    [InlineData(Saddle, "\"thickness\": 2", "\"thickness\": 21", "branch, diameter", "twice the wall")]
    [InlineData(Saddle, "\"length\": 150", "\"length\": 150, \"paper\": { \"stations\": 2 }", "stations", "4 to 360")]
    [InlineData(Elbow, "\"radius\": 110", "\"radius\": 30", "radius", "more than half the tube")]
    [InlineData(Elbow, "\"angle\": 90", "\"angle\": 200", "angle", "up to 180°")]
    [InlineData(Elbow, "\"angle\": 90", "\"angle\": 90, \"segments\": 1", "segments", "2 to 60")]
    [InlineData(Elbow, "\"angle\": 90", "\"angle\": 180, \"segments\": 2", "segments", "more")]
    [InlineData(Mitre, "\"angle\": 90", "\"angle\": 170", "angle", "up to 160")]
    [InlineData(Mitre, "\"length\": 100", "\"length\": 20", "length", "at least")]
    public void Bad_input_is_named(string file, string was, string now, string field, string wanted)
    {
        Assert.Contains(was, file, StringComparison.Ordinal);
        var read = TransitionJson.Read("{" + file.Replace(was, now, StringComparison.Ordinal) + "}");
        var refusal = read.Refusal ?? Made.Of(read.Value).Refusal;
        Assert.NotNull(refusal);
        Assert.Contains(field, refusal.Sentence, StringComparison.Ordinal);
        Assert.Contains(wanted, refusal.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Cone)]
    [InlineData(Duct)]
    [InlineData(Saddle)]
    [InlineData(Elbow)]
    [InlineData(Mitre)]
    public void The_same_file_unharmed_is_made(string file)
    {
        var kit = Made.Of(TransitionJson.Read("{" + file + "}").Value).Value.Kit;
        Assert.NotEmpty(kit.Pieces);
        Assert.NotEmpty(kit.Steps);
        Assert.NotEmpty(kit.Cautions);
    }
}
