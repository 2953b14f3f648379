using System.Text.Json;

namespace WitnessMark.Tests.Cli.Stores;

[Truth(Grade.Property, "the commands as a person types them: a typed list, the demonstration's records, a wrong list")]
public class RefitAndTagsTests
{
    [Fact]
    public void A_typed_list_becomes_stages()
    {
        using var place = new Place();
        var list = place.Write("off.csv", "part,after,because\nbonnet,,\nradiator,bonnet,\ngrille,,\n");
        var told = Told.By("refit", list);
        Assert.Equal((0, ""), (told.Code, told.Error));
        Assert.StartsWith("1. grille, radiator\n2. bonnet\nCan go on now: grille, radiator.\n", told.Out);
        var steps = JsonDocument.Parse(Told.By("refit", list, "--json").Out).RootElement.GetProperty("steps");
        Assert.Equal("bonnet", steps[2].GetProperty("part").GetString());
        Assert.Equal("radiator", steps[2].GetProperty("waits_for")[0].GetProperty("part").GetString());
    }

    [Fact]
    public void A_ring_is_told_and_the_rest_stands()
    {
        using var place = new Place();
        var told = Told.By("refit", place.Write("off.csv", "part,after,because\nbonnet,radiator,\nradiator,bonnet,\ngrille,,\n"));
        Assert.Equal(0, told.Code);
        Assert.StartsWith("! No order serves: the ", told.Out);
        Assert.Contains("1. grille", told.Out);
    }

    [Theory]
    [InlineData("part;after;because\na;;\n", "head row"), InlineData("part,after,because\na,a,\n", "line 2"), InlineData("part,after,because\n,a,\n", "name the part")]
    public void A_wrong_list_is_one_sentence(string list, string words)
    {
        using var place = new Place();
        var told = Told.By("refit", place.Write("off.csv", list));
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.Contains(words, told.Error);
        Assert.Single(told.Error.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public void Tags_are_kept_with_their_codes()
    {
        using var place = new Place();
        var db = place.At("van.db");
        Assert.Equal(0, Told.By("demo", "load", "--db", db).Code);
        Assert.Contains("Nothing is said to have come off.", Told.By("refit", "--db", db).Out);
        JsonElement Tags(params string[] more) => JsonDocument.Parse(Told.By(["tags", "--db", db, "--out", place.At("tags"), "--json", .. more]).Out).RootElement;
        var (first, again) = (Tags("--parts", "undecided"), Tags("--parts", "all", "--grid", "38.1x21.2", "--start", "9"));
        Assert.Equal(3, first.GetProperty("new").GetInt32());
        Assert.Equal(again.GetProperty("tags").GetArrayLength() - 3, again.GetProperty("new").GetInt32());
        var codes = again.GetProperty("tags").EnumerateArray().Select(t => t.GetProperty("code").GetString()).ToList();
        Assert.All(first.GetProperty("tags").EnumerateArray(), t => Assert.Contains(t.GetProperty("code").GetString(), codes));
        Assert.True(File.Exists(place.At("tags/tags.pdf")));
        Assert.Equal(2, Told.By("tags", "--db", db, "--places").Code);
        Assert.Contains("1 to 21", Told.By("tags", "--db", db, "--start", "22").Error);
    }
}
