using System.Text.Json;

namespace WitnessMark.Tests.Cli.Shapes;

public class FabricationTests
{
    [Fact]
    [Truth(Grade.Property, "the demonstration's stay of eight faces: every face in one piece of the split, a setting angle for each weld, files that are there")]
    public void The_demonstrations_stay_is_split()
    {
        using var place = new Place();
        var told = Told.By("split", "demo/shapes/split-bracket.json", "--out", place.At(""), "--json");
        Assert.Equal((0, ""), (told.Code, told.Error));
        var answer = JsonDocument.Parse(told.Out).RootElement;
        var split = answer.GetProperty("splits")[0];
        Assert.Equal(8, split.GetProperty("pieces").EnumerateArray().Sum(p => p.GetProperty("faces").GetArrayLength()));
        Assert.Equal(11, split.GetProperty("folded").GetArrayLength() + split.GetProperty("reasons").GetArrayLength());
        Assert.True(answer.GetProperty("proven").GetBoolean());
        Assert.Contains("split-bracket-shape.stl", place.Files);
        Assert.Contains("split-bracket-card.pdf", place.Files);
    }

    [Theory]
    [InlineData("tool", "Holds 97.50°")]
    [InlineData("sine", "wear block")]
    [InlineData("jig", "bush 5 × 8 × 10 mm")]
    [InlineData("form", "Nose radius")]
    [Truth(Grade.Property, "each kind of typed setting is made and told")]
    public void Typed_settings_are_made(string kind, string told)
    {
        using var place = new Place();
        var run = Told.By("setting", $"demo/shapes/setting-{kind}.json", "--out", place.At(""));
        Assert.Equal((0, ""), (run.Code, run.Error));
        Assert.Contains(told, run.Out);
        Assert.Contains($"setting-{kind}-whole.pdf", place.Files);
    }

    [Fact]
    [Truth(Grade.Published, "5 in bar at 30°: 2.5 in, of 2 and 0.5 (public sine-bar lesson)")]
    public void A_sine_bar_is_answered_at_once() =>
        Assert.Contains("2.5000 in", Told.By("setting", "--angle", "30", "--bar", "5 in", "--set", "e81").Out);

    [Theory]
    [InlineData("setting")]
    [InlineData("setting", "--angle", "95")]
    [InlineData("setting", "--angle", "30", "--set", "m99")]
    [InlineData("split", "demo/samples/pin.csv")]
    [InlineData("split", "demo/shapes/split-bracket.json", "--choice", "9")]
    [InlineData("split", "demo/shapes/split-bracket.json", "--plugs", "rivets")]
    [InlineData("split", "demo/shapes/split-bracket.json", "--seconds", "0")]
    [InlineData("split", "demo/shapes/split-bracket.json", "--seconds", "-1")]
    [Truth(Grade.Property, "one sentence on the error stream, exit code 2, nothing written")]
    public void Bad_input_is_one_sentence(params string[] args)
    {
        using var place = new Place();
        var run = Told.By([.. args, "--out", place.At("")]);
        Assert.Equal((2, ""), (run.Code, run.Out));
        Assert.Single(run.Error.TrimEnd('\n').Split('\n'));
        Assert.Empty(place.Files);
    }

    [Theory]
    [InlineData("\"tool_radius\": 5, \"tool_angle\": 92, \"wanted_radius\": 12, \"wanted_angle\": 45", "wanted_radius")]
    [InlineData("\"tool_angle\": 92, \"wanted_angle\": 45", "wanted_angle")]
    [Truth(Grade.Property, "two sayings of one bend are refused by name, in one sentence")]
    public void A_form_tool_is_given_once(string bend, string told)
    {
        using var place = new Place();
        var run = Told.By("setting", place.Write("f.json", $$"""{ "kind": "form tool", {{bend}}, "thickness": 1, "flange": 30, "length": 80 }"""));
        Assert.Equal((2, ""), (run.Code, run.Out));
        Assert.Contains($"{told}: ", run.Error);
        Assert.Contains("not both", run.Error);
    }
}
