using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;

namespace WitnessMark.Tests.FrontOffice.MeasureSample;

public class WornSheetTests
{
    const string Sheet = """
        sample,stay,A rusted stay
        feature,kind,from,to,x,y,condition,wear
        H1,hole,,,20,20
        H2,hole,,,100,18,worn
        H3,hole,,,60,62,repaired
        low,edge,,,60,0,rusted,0.4
        frame,scale
        photo,± 0.5 %
        kind,from,to,value,instrument
        diameter,H1,,10.02,calliper
        diameter,H2,,10.4,calliper
        diameter,H3,,10.02,calliper
        outside over holes,H1,H2,90.3,calliper
        outside over holes,H1,H3,68.0,calliper
        outside over holes,H2,H3,69.5,calliper
        edge to hole,H1,low,14.6,calliper
        edge to hole,H2,low,12.4,calliper
        picked,H1,photo,x 20 y 20,± 0.2
        picked,H3,photo,x 60 y 62,± 0.2
        """;

    const string Json = """
        { "id": "stay", "points": [ { "id": "H1", "type": "hole", "condition": "worn", "wear_mm": 0.3 } ], "edges": [ { "id": "E", "condition": "rusted" } ],
          "frames": [ { "name": "photo", "scale_std": 0.0025 } ], "readings": [ { "kind": "diameter", "from": "H1", "value_mm": 10, "sigma_mm": 0.02 } ] }
        """;

    [Fact]
    [Truth(Grade.Property, "what was typed is what is read")]
    public void Condition_wear_and_scale_are_read_from_a_sheet_and_from_JSON()
    {
        var sample = SampleFile.Read(Sheet).Value;
        Assert.Equal([FeatureCondition.Sound, FeatureCondition.Worn, FeatureCondition.Repaired, FeatureCondition.Rusted], sample.Features.Select(f => f.Condition));
        Assert.Equal([null, null, null, 0.4], sample.Features.Select(f => f.Wear));
        Assert.Equal([new PickFrame("photo", 0.0025)], sample.Frames);
        var json = SampleFile.Read(Json).Value;
        Assert.Equal((FeatureCondition.Worn, (double?)0.3), (json.Features[0].Condition, json.Features[0].Wear));
        Assert.Equal(FeatureCondition.Rusted, json.Features[1].Condition);
        Assert.Equal(sample.Frames, json.Frames);
    }

    [Fact]
    [Truth(Grade.Property, "metal that is gone makes an outside short and a hole large")]
    public void The_answer_says_what_each_reading_bounds()
    {
        var result = WitnessMark.FrontOffice.MeasureSample.MeasureSample.Run(new MeasureRequest(SampleFile.Read(Sheet).Value));
        var words = string.Join("\n", WearWords.Of(result.Sample, result.Plan));
        Assert.Contains("reading 2, diameter H2: was made at most 10.40 mm", words, StringComparison.Ordinal);
        Assert.Contains("reading 7, edge to hole H1 low: was made at least 14.60 mm", words, StringComparison.Ordinal);
        Assert.Contains("reading 3, diameter H3: says what is there now, not what was made", words, StringComparison.Ordinal);
        Assert.Contains("photo: shows everything", words, StringComparison.Ordinal);
        Assert.Contains(result.Cautions, c => c.StartsWith("H3: repaired", StringComparison.Ordinal));
        var json = result.ToJson();
        Assert.Contains("\"says_of_made_size\": \"at_most\"", json, StringComparison.Ordinal);
        Assert.Contains("\"condition\": \"rusted\"", json, StringComparison.Ordinal);
        Assert.Contains("\"scale_std\"", json, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("worn\n", "eaten\n", "line 4, condition: \"eaten\" is not accepted; write sound, worn, rusted, bent or repaired.")]
    [InlineData("rusted,0.4", ",0.4", "line 6, wear: \"0.4\" is not accepted; only what is worn, rusted or bent has a wear; say so in condition, or leave it empty.")]
    [InlineData("± 0.5 %", "some", "line 8, scale: \"some\" is not accepted; write how far off its scale may be, such as ± 0.5 %.")]
    [InlineData("± 0.5 %", "± 50 %", "line 8, scale: \"50\" is not accepted; a scale is off by 0 to 20 %.")]
    [Truth(Grade.Property, "a refusal names the line, the field, the value and what would be right")]
    public void What_cannot_be_is_refused(string was, string becomes, string sentence) =>
        Assert.Equal(sentence, SampleFile.Read(Sheet.ReplaceLineEndings("\n").Replace(was, becomes)).Refusal!.Sentence);
}
