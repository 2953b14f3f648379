using System.Text.Json;

namespace WitnessMark.Tests.Cli.Survey;

/// <summary>The command finds, obeys, refuses and draws.</summary>
[Truth(Grade.Property, "the command says what the search found; its answer on the demo plate stands in docs/guide/intent.md")]
public class IntentTests
{
    const string Plate = "demo/samples/dynamo-plate.csv";

    [Fact]
    public void Intent_says_what_was_found_with_its_odds()
    {
        var told = Told.By("intent", Plate, "--origin", "british");
        Assert.Equal((0, ""), (told.Code, told.Error));
        Assert.Contains("are of one size", told.Out);
        Assert.Contains("chi-square", told.Out);
        Assert.Contains("odds", told.Out);
    }

    /// <summary>docs/guide/intent.md shows this very answer.</summary>
    [Fact]
    public void The_guide_s_example_is_what_is_said() =>
        Assert.Contains(Told.By("intent", Plate, "--origin", "british").Out.TrimEnd('\n'), File.ReadAllText("guide/intent.md").ReplaceLineEndings("\n"));

    [Fact]
    public void Intent_prints_one_object_and_obeys_a_refusal()
    {
        var free = Json("intent", Plate, "--json");
        var key = free.GetProperty("findings").EnumerateArray().First(f => f.GetProperty("key").GetString()!.StartsWith("equal:", StringComparison.Ordinal)).GetProperty("key").GetString()!;
        var refused = Json("intent", Plate, "--json", "--refuse", key);
        Assert.DoesNotContain(refused.GetProperty("findings").EnumerateArray(), f => f.GetProperty("key").GetString() == key && f.GetProperty("standing").GetString() == "accepted");
        Assert.Contains(refused.GetProperty("findings").EnumerateArray(), f => f.GetProperty("standing").GetString() == "refused");
    }

    [Fact]
    public void A_pattern_that_is_not_there_is_refused_in_one_sentence()
    {
        var told = Told.By("intent", Plate, "--force", "equal:H1,H77");
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.Contains("there is no feature H77", told.Error);
    }

    [Fact]
    public void A_part_without_outline_keeps_its_findings_and_says_why_it_is_not_drawn()
    {
        var folder = Directory.CreateTempSubdirectory("intent").FullName;
        var sheet = Path.Combine(folder, "row.csv");
        File.WriteAllText(sheet, "sample,row,Row\nunits,mm\n\nfeature,kind,from,to,x,y\nH1,hole,,,0,0\nH2,hole,,,24,0\nH3,hole,,,30,20\n\nkind,from,to,value,instrument\n"
            + "diameter,H1,,6.64,calliper\ndiameter,H2,,6.60,calliper\ndiameter,H3,,6.62,calliper\n"
            + "outside over holes,H1,H2,30.74,calliper\noutside over holes,H1,H3,42.66,calliper\noutside over holes,H2,H3,27.50,calliper\n");
        var told = Told.By("intent", sheet, "--out", Path.Combine(folder, "drawn"));
        Assert.Equal(2, told.Code);
        Assert.Contains("H1, H2 and H3 are of one size", told.Out);
        Assert.StartsWith("no drawing was made, outline: ", told.Error);
        Assert.Single(told.Error.TrimEnd('\n').Split('\n'));
        Assert.False(Directory.Exists(Path.Combine(folder, "drawn")));
        Assert.Equal(told.Out, Told.By("intent", sheet).Out);
    }

    [Fact]
    public void The_drawing_calls_holes_of_one_size_out_together()
    {
        var folder = Directory.CreateTempSubdirectory("intent").FullName;
        var told = Told.By("intent", Plate, "--origin", "british", "--out", folder);
        Assert.Equal((0, ""), (told.Code, told.Error));
        var svg = File.ReadAllText(Path.Combine(folder, "dynamo-plate-meant.svg"));
        Assert.Matches(@"\d × ⌀", svg);
        Assert.True(File.Exists(Path.Combine(folder, "dynamo-plate-meant.pdf")));
        Assert.True(File.Exists(Path.Combine(folder, "dynamo-plate-meant.dxf")));
    }

    static JsonElement Json(params string[] args)
    {
        var told = Told.By(args);
        Assert.Equal((0, ""), (told.Code, told.Error));
        return JsonDocument.Parse(told.Out).RootElement;
    }
}
