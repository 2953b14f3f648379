using System.Text.Json;

namespace WitnessMark.Tests.Cli.Road;

/// <summary>The demonstration's road by commands: drawing, blank, job, plan.</summary>
public class RoadTests
{
    [Fact]
    public void Draw_writes_pdf_svg_dxf_and_template_and_says_where()
    {
        using var place = new Place();
        var told = Told.By("draw", "demo/samples/dynamo-plate.csv", "--origin", "british", "--out", place.At(""));
        Assert.Equal((0, ""), (told.Code, told.Error));
        Assert.Equal(["dynamo-plate-drawing.pdf", "dynamo-plate-drawing.svg", "dynamo-plate-plan.svg", "dynamo-plate-template.pdf", "dynamo-plate.dxf"], place.Files);
        Assert.All(place.Files, f => Assert.Contains(place.At(f), told.Out));
    }

    [Theory]
    [InlineData("mm")]
    [InlineData("inch")]
    [InlineData("fraction")]
    public void Draw_writes_lengths_as_the_person_wants(string units)
    {
        using var place = new Place();
        Assert.Equal(0, Told.By("draw", "demo/samples/lamp-bracket.csv", "--units", units, "--out", place.At("")).Code);
    }

    [Fact]
    public void Blank_says_bends_order_and_files()
    {
        using var place = new Place();
        var blank = Json("blank", "demo/samples/lamp-bracket.json", "--out", place.At(""), "--json");
        Assert.Equal(2, blank.GetProperty("bends").GetArrayLength());
        Assert.True(blank.GetProperty("order").GetProperty("possible").GetBoolean());
        Assert.Equal(0, blank.GetProperty("area_imbalance").GetDouble(), 1e-9);
        Assert.All(blank.GetProperty("files").EnumerateArray(), f => Assert.True(File.Exists(f.GetString())));
    }

    [Fact]
    public void A_job_lands_in_the_plan_once_and_is_counted()
    {
        using var place = new Place();
        var db = place.At("van.db");
        Assert.Equal(0, Told.By("demo", "load", "--db", db).Code);
        var before = Json("forecast", "--db", db, "--json").GetProperty("jobs").GetInt32();
        for (var i = 0; i < 2; i++)
        {
            var told = Told.By("job", "demo/samples/lamp-bracket.json", "--db", db, "--part", "rear lamp bracket", "--hand", "LH", "--out", place.At(""));
            Assert.Equal((0, ""), (told.Code, told.Error));
            Assert.Contains("hours", told.Out);
        }
        var forecast = Json("forecast", "--db", db, "--json");
        Assert.Equal(before, forecast.GetProperty("jobs").GetInt32());
        var card = Json("plan", "order", "--db", db, "--seconds", "0.2", "--json").GetProperty("jobs").EnumerateArray();
        Assert.Single(card, j => j.GetProperty("title").GetString()!.StartsWith("Rear lamp bracket LH: make", StringComparison.Ordinal));
        Assert.True(forecast.GetProperty("hours").GetProperty("p90").GetProperty("value").GetDouble() > forecast.GetProperty("hours").GetProperty("p50").GetProperty("value").GetDouble());
    }

    [Fact]
    public void Loading_twice_doubles_nothing()
    {
        using var place = new Place();
        Assert.NotEqual(0, Json("demo", "load", "--db", place.At("van.db"), "--json").GetProperty("new_readings").GetInt32());
        var again = Json("demo", "load", "--db", place.At("van.db"), "--json");
        Assert.Equal((0, 0), (again.GetProperty("new_readings").GetInt32(), again.GetProperty("new_rows").GetInt32()));
    }

    [Fact]
    public void A_flat_part_says_how_thick_it_is()
    {
        using var place = new Place();
        Assert.Contains("--thickness", Told.By("job", "demo/samples/dynamo-plate.csv", "--out", place.At("")).Error);
        Assert.Contains("⌀7.94", Told.By("job", "demo/samples/dynamo-plate.csv", "--thickness", "10 SWG", "--out", place.At("")).Out);
    }

    [Theory]
    [InlineData("made-to sheet demo/samples/stud.csv --origin british", "5/16 BSF")]
    [InlineData("made-to sheet demo/samples/pin.csv --origin british", "3/8 in")]
    [InlineData("thread 2BA", "0.8100 mm")]
    [InlineData("gauge 1.63mm", "16 SWG")]
    [InlineData("drill 1/4in", "E drill")]
    public void Sizes_are_named(string command, string said) => Assert.Contains(said, Told.By(command.Split(' ')).Out);

    [Theory]
    [InlineData("thread 7/3BSF")]
    [InlineData("gauge thick")]
    [InlineData("drill 0")]
    [InlineData("forecast --db none.db")]
    [InlineData("job demo/samples/lamp-bracket.json --db none.db")]
    [InlineData("blank demo/samples/stud.csv")]
    [InlineData("blank demo/samples/lamp-bracket.json --allowance guess")]
    [InlineData("blank demo/samples/lamp-bracket.json --material cheese")]
    [InlineData("draw demo/samples/stud.csv")]
    [InlineData("draw demo/samples/headlamp-bracket.csv")]
    [InlineData("demo load --from nowhere --db none.db")]
    public void What_cannot_be_done_is_one_sentence_and_exit_code_two(string command)
    {
        using var place = new Place();
        var told = Told.By([.. command.Split(' ').Select(a => a == "none.db" ? place.At("none.db") : a), .. command.StartsWith("draw", StringComparison.Ordinal) || command.StartsWith("blank", StringComparison.Ordinal) ? new[] { "--out", place.At("") } : []]);
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.Single(told.Error.TrimEnd('\n').Split('\n'));
        Assert.Empty(place.Files);
    }

    static JsonElement Json(params string[] args)
    {
        var told = Told.By(args);
        Assert.Equal((0, ""), (told.Code, told.Error));
        return JsonDocument.Parse(told.Out).RootElement;
    }
}
