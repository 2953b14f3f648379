using System.Text.Json;

namespace WitnessMark.Tests.Cli.Survey;

public class SurveyTests
{
    static readonly string[] AnswerFields =
    [
        "unknowns", "datum_freedoms", "loose_freedoms", "readings_used", "redundancy", "weighted_sum_of_squares", "largest_normalised_residual",
        "distances", "undetermined_distances", "diameters", "undetermined_diameters", "readings", "gross_error_indices", "one_at_a_time",
        "without_gross_errors", "loose", "mirror", "coordinates", "converged", "global_test", "next_reading",
    ];

    [Fact]
    public void Solve_prints_one_object_with_every_field()
    {
        var answer = Json("survey", "solve", "demo/samples/dynamo-plate.csv", "--json");
        Assert.All(AnswerFields, f => Assert.True(answer.TryGetProperty(f, out _), f));
        Assert.Equal(JsonValueKind.Object, answer.GetProperty("without_gross_errors").ValueKind);
        Assert.Equal(12 * 11 / 2, answer.GetProperty("distances").GetArrayLength());
    }

    [Fact]
    public void Solve_says_in_words_what_is_doubtful_and_what_is_loose()
    {
        Assert.Contains("doubtful: reading", Told.By("survey", "solve", "demo/samples/dynamo-plate.csv").Out);
        Assert.Contains("! Loose: H6", Told.By("survey", "solve", "demo/samples/headlamp-bracket.csv").Out);
    }

    [Fact]
    public void Next_says_what_to_read()
    {
        var next = Json("survey", "next", "demo/samples/headlamp-bracket.csv", "--json");
        Assert.False(next.GetProperty("enough").GetBoolean());
        Assert.NotEqual(0, next.GetProperty("readings").GetArrayLength());
        Assert.Equal(2, Told.By("survey", "next", "demo/samples/headlamp-bracket.csv", "--wanted", "soon").Code);
    }

    [Fact]
    public void An_empty_sheet_needs_only_a_feature_to_be_read()
    {
        using var place = new Place();
        var sheet = Told.By("survey", "sheet", "plate", "--title", "A plate, with a comma").Out;
        var filled = place.Write("plate.csv", sheet.Replace("feature,kind,from,to,x,y\n", "feature,kind,from,to,x,y\nH1,hole\n") + "diameter,H1,,6.5,calliper\n");
        var told = Told.By("survey", "solve", filled);
        Assert.Equal((0, ""), (told.Code, told.Error));
        Assert.StartsWith("plate, A plate, with a comma", told.Out);
    }

    [Fact]
    public void The_sheet_prints_to_fill_in_by_hand()
    {
        using var place = new Place();
        Assert.Equal(0, Told.By("survey", "sheet", "plate", "--pdf", place.At("plate.pdf")).Code);
        Assert.True(File.ReadAllBytes(place.At("plate.pdf")).AsSpan().StartsWith("%PDF-"u8));
    }

    [Fact]
    public void Bad_input_is_one_sentence_and_exit_code_two()
    {
        using var place = new Place();
        (string File, string Sentence)[] bad =
        [
            (place.At("none.csv"), "name a file that is there"),
            (place.Write("cut.json", "{\"points\": ["), "breaks off"),
            (place.Write("empty.csv", ""), "name at least one feature"),
            (place.Write("noughts.csv", "\0\0\u001b[31m"), "before the tables come sample and units"),
            (place.Write("sheet.csv", "feature,kind\nH1,hole\nkind,from,value,instrument\ndiameter,H2,6.5,rule\n"), "line 4, from: \"H2\""),
        ];
        foreach (var (file, sentence) in bad)
        {
            var told = Told.By("survey", "solve", file, "--json");
            Assert.Equal((2, ""), (told.Code, told.Out));
            Assert.Contains(sentence, told.Error);
            Assert.DoesNotContain('\u001b', told.Error);
            Assert.Single(told.Error.TrimEnd('\n').Split('\n'));
        }
    }

    [Fact]
    public void A_file_too_large_is_refused_before_it_is_read()
    {
        using var place = new Place();
        using (var file = File.Create(place.At("huge.json"))) file.SetLength(50_000_000);
        var told = Told.By("survey", "solve", place.At("huge.json"));
        Assert.Equal(2, told.Code);
        Assert.Contains("it holds 50 MB", told.Error);
    }

    static JsonElement Json(params string[] args)
    {
        var told = Told.By(args);
        Assert.Equal((0, ""), (told.Code, told.Error));
        return JsonDocument.Parse(told.Out).RootElement;
    }
}
