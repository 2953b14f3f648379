using WitnessMark.DrawingOffice.Rails;
using WitnessMark.DrawingOffice.Sheetwork;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Rails;

[Truth(Grade.Property, "house rule: bad input gets one sentence that names field, value and what would be right")]
public class RailRefusalTests
{
    static string Json(string stations, string more = "") => $$"""{ "kind": "C", "thickness": 2, "inside_radius": 3, {{more}} "stations": [{{stations}}] }""";

    const string First = """{ "at": 0, "web": 80, "lower": 35 }""";

    [Theory]
    [InlineData(First, "", "stations: \"1\"")]
    [InlineData(First + """, { "at": 300 }, { "at": 200 }""", "", "station 3, at: \"200\"")]
    [InlineData(First + """, { "at": 300, "lower": 4 }""", "", "station 2, lower: \"4\"")]
    [InlineData(First + """, { "at": 300, "web": 9 }""", "", "station 2, web: \"9\"")]
    [InlineData(First + """, { "at": 300, "ease": -1 }, { "at": 500 }""", "", "station 2, ease")]
    [InlineData(First + """, { "at": 300, "ease": 5000 }, { "at": 500, "level": 50 }""", "", "station 2, ease: \"5000 mm\"")]
    [InlineData(First + """, { "at": 100, "level": 300 }""", "", "station 2, level: \"300\"")]
    [InlineData(First + """, { "at": 300 }""", """ "lower_angle": 150, """, "lower_angle: \"150°\"")]
    [InlineData("""{ "at": 0, "web": 40, "lower": 35, "lower_lip": 30 }, { "at": 300 }""", "", "section")]
    [InlineData("""{ "at": 0, "web": 80, "lower": 35, "wide": 3 }""", "", "wide")]
    [InlineData("""{ "at": 0, "lower": 35 }, { "at": 300 }""", "", "web: nothing is given")]
    public void A_rail_that_cannot_be_is_refused_by_name(string stations, string more, string words)
    {
        var read = RailJson.Read(Json(stations, more));
        var refusal = read.Refusal ?? MadeRail.Of(read.Value, new Din6935(), 28).Refusal;
        Assert.Contains(words, refusal!.Sentence);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("-2")]
    [InlineData("1e-12")]
    [InlineData("0.04")]
    public void No_thickness_is_refused(string thickness)
    {
        var read = RailJson.Read(Json(First + """, { "at": 300 }""").Replace("\"thickness\": 2", $"\"thickness\": {thickness}"));
        Assert.Contains("thickness", (read.Refusal ?? MadeRail.Of(read.Value, new Din6935(), 28).Refusal)!.Sentence);
    }

    [Fact]
    public void A_flange_that_reaches_the_middle_of_its_bend_is_refused()
    {
        var refusal = RailForm.Of(Made.Cranked(36, 0.5), new Din6935()).Refusal;
        Assert.Contains("ease", refusal!.Sentence);
        Assert.Contains("larger radius", refusal.Sentence);
    }
}
