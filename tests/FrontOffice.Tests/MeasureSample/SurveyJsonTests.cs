using System.Text;
using CsCheck;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.MeasureSample;

public class SurveyJsonTests
{
    const string Good = """
        {
          "id": "plate", "title": "Plate", "units": "mm",
          "points": [
            { "id": "C1", "type": "corner", "sketch_x_mm": 0, "sketch_y_mm": 0 },
            { "id": "C2", "type": "corner", "sketch_x_mm": null, "sketch_y_mm": null },
            { "id": "H1", "type": "hole" }
          ],
          "edges": [ { "id": "E1", "from": "C1", "to": "C2" } ],
          "readings": [
            { "index": 0, "kind": "centre_distance", "from": "C1", "to": "C2", "value_mm": 80.5, "instrument": "calliper", "sigma_mm": 0.02 },
            { "index": 1, "kind": "edge_to_hole", "from": "H1", "to": "E1", "value_mm": 12.5, "sigma_mm": 0.02 },
            { "index": 2, "kind": "diameter", "from": "H1", "value_mm": 6.5, "sigma_mm": 0.02 }
          ],
          "answers": { "anything": [1, 2, 3] }
        }
        """;

    [Fact]
    public void Reads_points_edges_and_readings_in_order()
    {
        var sample = Read(Good).Value;
        Assert.Equal(["C1", "C2", "H1", "E1"], sample.Features.Select(f => f.Id));
        Assert.Equal(new Vec2(0, 0), sample.Features[0].Sketch);
        Assert.Null(sample.Features[1].Sketch);
        Assert.Equal([ReadingKind.CentreDistance, ReadingKind.EdgeToHole, ReadingKind.Diameter], sample.Readings.Select(r => r.Kind));
        Assert.Equal(80.5, sample.Readings[0].Value);
        Assert.Null(sample.Readings[2].To);
    }

    [Theory]
    [InlineData("plate-01-clean", 13, 32)]
    [InlineData("plate-02-one-gross", 24, 70)]
    [InlineData("plate-03-loose-hole", 15, 37)]
    [InlineData("plate-04-mirror", 17, 47)]
    public void Reads_the_four_plates(string name, int features, int readings)
    {
        var sample = SampleFile.Read(File.ReadAllBytes($"truth/survey/{name}.json")).Value;
        Assert.Equal((features, readings), (sample.Features.Length, sample.Readings.Length));
    }

    [Theory]
    [InlineData("\"from\": \"H1\", \"to\": \"E1\"", "\"from\": \"H9\", \"to\": \"E1\"", "line 11, readings[1].from: \"H9\" is not accepted; name a hole or a point or an arc that")]
    [InlineData("\"from\": \"H1\", \"to\": \"E1\"", "\"from\": \"h1\", \"to\": \"E1\"", "perhaps H1")]
    [InlineData("\"from\": \"H1\", \"to\": \"E1\"", "\"from\": \"H1\", \"to\": \"C1\"", "readings[1].to: \"C1\" is not accepted; it is a point")]
    [InlineData("\"id\": \"H1\"", "\"id\": \"C2\"", "line 6, points[2].id: \"C2\" is not accepted; it is there already")]
    [InlineData("\"value_mm\": 6.5", "\"value_mm\": -6.5", "line 12, readings[2].value_mm: \"-6.5\" is not accepted; a diameter is more than 0 mm")]
    [InlineData("\"value_mm\": 6.5", "\"value_mm\": 0", "more than 0 mm")]
    [InlineData("\"value_mm\": 6.5", "\"value_mm\": \"6.5\"", "without quotes")]
    [InlineData("\"value_mm\": 6.5", "\"value_mm\": 1e999", "readings[2].value_mm: \"1e999\" is not accepted; give a plain finite number")]
    [InlineData("\"value_mm\": 6.5", "\"value_mm\": NaN", "line 12, file")]
    [InlineData("\"value_mm\": 6.5", "\"value\": 6.5", "readings[2].value_mm: nothing is given")]
    [InlineData("\"value_mm\": 6.5", "\"value_rad\": 6.5", "a diameter is read in mm")]
    [InlineData("\"value_mm\": 6.5, \"sigma_mm\": 0.02", "\"value_mm\": 6.5, \"sigma_mm\": 0", "readings[2].sigma_mm: \"0\" is not accepted")]
    [InlineData("\"value_mm\": 6.5, \"sigma_mm\": 0.02", "\"value_mm\": 6.5, \"sigma_mm\": -1", "more than 0")]
    [InlineData("\"value_mm\": 6.5, \"sigma_mm\": 0.02", "\"value_mm\": 6.5", "readings[2].sigma_mm: nothing is given; say how good the reading is")]
    [InlineData("\"kind\": \"diameter\"", "\"kind\": \"girth\"", "readings[2].kind: \"girth\" is not accepted; write one of centre_distance")]
    [InlineData("\"index\": 2", "\"index\": 7", "this one is 2")]
    [InlineData("\"units\": \"mm\"", "\"units\": \"inch\"", "units: \"inch\" is not accepted")]
    [InlineData("\"type\": \"hole\"", "\"type\": \"dent\"", "points[2].type: \"dent\" is not accepted; write corner, hole, slot, edge or arc")]
    [InlineData("\"sketch_y_mm\": 0", "\"sketch_y_mm\": null", "both places of the sketch or neither")]
    [InlineData("\"from\": \"C1\", \"to\": \"C2\" }", "\"from\": \"C1\", \"to\": \"C1\" }", "two different corners")]
    [InlineData("\"id\": \"H1\"", "\"id\": \"\"", "points[2].id: nothing is given")]
    [InlineData("\"answers\": { \"anything\": [1, 2, 3] }", "\"answers\": { \"anything\": [1, 2", "breaks off")]
    [InlineData("\"id\": \"plate\"", "\"id\": \"plate\", \"id\": \"other\"", "names a field twice")]
    public void Refuses_with_one_sentence(string right, string wrong, string sentence)
    {
        Assert.Contains(right, Good);
        var refusal = Read(Good.Replace(right, wrong)).Refusal;
        Assert.NotNull(refusal);
        Assert.Contains(sentence, refusal.Sentence);
        Assert.DoesNotContain('\n', refusal.Sentence);
    }

    [Fact]
    public void Refuses_a_triangle_that_nothing_else_can_put_right()
    {
        var refusal = Read(Triangle(10, 20, 50, "")).Refusal;
        Assert.Contains("readings[2].value_mm: \"50\" is not accepted; A, C and B can make no triangle, since A to B to C is only 30 mm", refusal?.Sentence);
    }

    [Fact]
    public void Passes_an_impossible_triangle_that_the_adjustment_can_judge() =>
        Assert.True(Read(Triangle(10, 20, 50, """, { "kind": "centre_distance", "from": "A", "to": "B", "value_mm": 40, "sigma_mm": 0.02 }""")).Ok);

    [Fact]
    public void Refuses_text_that_is_not_utf8_and_says_the_line()
    {
        byte[] latin = [.. "{\n \"title\": \""u8, 0xE9, .. "\"}"u8];
        Assert.Equal("line 2, text: \"byte E9\" is not accepted; save the file as UTF-8.", SampleFile.Read(latin).Refusal?.Sentence);
    }

    [Fact]
    public void Refuses_fifty_megabytes_by_size() =>
        Assert.Contains("at most 16 MB", SampleFile.Read(new byte[50_000_000]).Refusal?.Sentence);

    [Fact]
    public void Refuses_an_empty_file() => Assert.False(SampleFile.Read([]).Ok);

    [Fact]
    [Truth(Grade.Property, "every input is read or refused with one sentence, whatever is done to a good file")]
    public void Survives_any_damage() =>
        Gen.Select(Gen.Int[0, Good.Length - 1], Gen.Int[0, 40], Gen.String).Sample((at, cut, junk) =>
        {
            var damaged = Good[..at] + junk + Good[Math.Min(Good.Length, at + cut)..];
            var read = SampleFile.Read(Encoding.UTF8.GetBytes(damaged));
            return read.Ok || read.Refusal!.Sentence.Length > 0;
        }, iter: 3000);

    static Parsed<Sample> Read(string json) => SampleFile.Read(Encoding.UTF8.GetBytes(json));

    static string Triangle(double ab, double bc, double ac, string more) => $$"""
        {"points":[{"id":"A","type":"hole"},{"id":"B","type":"hole"},{"id":"C","type":"hole"}],"readings":[
        {"kind":"centre_distance","from":"A","to":"B","value_mm":{{ab}},"sigma_mm":0.02},
        {"kind":"centre_distance","from":"B","to":"C","value_mm":{{bc}},"sigma_mm":0.02},
        {"kind":"centre_distance","from":"A","to":"C","value_mm":{{ac}},"sigma_mm":0.02}{{more}}]}
        """;
}
