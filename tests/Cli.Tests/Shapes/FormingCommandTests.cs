using System.Text.Json;

namespace WitnessMark.Tests.Cli.Shapes;

[Truth(Grade.Property, "commands answer in words and in one JSON object, write only where they are told, and refuse in one sentence")]
public class FormingCommandTests
{
    static JsonElement Json(params string[] args)
    {
        var told = Told.By([.. args, "--json"]);
        Assert.Equal((0, ""), (told.Code, told.Error));
        return JsonDocument.Parse(told.Out).RootElement;
    }

    [Fact]
    public void Bead()
    {
        using var place = new Place();
        var json = Json("bead", "demo/shapes/bead-floor.json", "--out", place.At("out"));
        Assert.Equal(400 + 5 * json.GetProperty("bead").GetProperty("extra_mm").GetDouble() + json.GetProperty("edges")[0].GetProperty("exact_mm").GetDouble(), json.GetProperty("blank_width_mm").GetDouble(), 1e-9);
        Assert.All(json.GetProperty("files").EnumerateArray(), f => Assert.True(File.Exists(f.GetString())));
        Assert.Contains("! Beads stiffen a panel one way only", Told.By("bead", "demo/shapes/bead-floor.json").Out);
        Assert.Equal(JsonValueKind.Null, Json("bead", "demo/shapes/bead-bulkhead.json").GetProperty("bead").ValueKind);
    }

    [Fact]
    public void Spring_back()
    {
        string[] asked = ["spring-back", "--radius", "20", "--thickness", "1.2 mm", "--length", "300 mm"];
        var table = Json(asked);
        Assert.InRange(table.GetProperty("former_radius_mm").GetDouble(), 18, 20);
        Assert.Equal(table.GetProperty("table_radius_mm").GetProperty("value").GetDouble(), table.GetProperty("former_radius_mm").GetDouble());
        Assert.True(Json([.. asked, "--trial", "20", "97", "90"]).GetProperty("by_trial").GetBoolean());
        Assert.Contains("make the former", Told.By(asked).Out);
    }

    [Fact]
    public void Section()
    {
        var json = Json("section", "demo/shapes/section-rail-pressed.json", "--against", "demo/shapes/section-rail-two-piece.json");
        Assert.True(json.GetProperty("no_weaker").GetBoolean());
        Assert.Equal(2, json.GetProperty("copy").GetProperty("joins").GetArrayLength());
        Assert.Contains("The copy is no weaker in these figures.", Told.By("section", "demo/shapes/section-rail-pressed.json", "--against", "demo/shapes/section-rail-two-piece.json").Out);
    }

    [Theory]
    [InlineData("spring-back --radius 20 --thickness 0", "thickness: ")]
    [InlineData("spring-back --radius 20 --thickness 1 --angle 200", "angle: ")]
    [InlineData("spring-back --radius 20 --thickness 1 --trial 20 80 90", "trial bend, angle found: ")]
    [InlineData("spring-back --radius 20 --thickness 1 --die 1", "die opening: ")]
    [InlineData("spring-back --radius 20 --thickness 1 --material Grey", "material: ")]
    [InlineData("bead demo/shapes/section-rail-pressed.json", "panel: ")]
    [InlineData("section demo/shapes/bead-floor.json", "section: ")]
    [InlineData("section no-such-file.json", "file: ")]
    public void What_cannot_be_is_one_sentence(string command, string sentence)
    {
        var told = Told.By(command.Split(' '));
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.StartsWith(sentence, told.Error);
        Assert.Single(told.Error.TrimEnd('\n').Split('\n'));
    }
}
