using System.Text.Json;

namespace WitnessMark.Tests.Cli.Stores;

/// <summary>Searching the demonstration's parts and writing its wants list by commands.</summary>
public class FindAndWantsTests
{
    [Theory]
    [InlineData("front sprng LH", "Front spring LH, 1 off, Q12-1041, Chassis and steering: \"front\" in the name; \"sprng\" read as \"spring\" in the name; \"LH\" in the hand")]
    [InlineData("cilinder studs", "Cylinder head stud, 10 off, Q12-3021, Engine: \"cilinder\" read as \"Cylinder\" in the name; \"studs\" read as \"stud\" in the name")]
    [InlineData("q12-4301", "Battery box, 1 off, Q12-4301, Electrics: \"Q12\" in the reference; \"4301\" in the reference")]
    [InlineData("zzzzz", "no part holds any of these words")]
    public void Find_says_what_and_why(string words, string first)
    {
        using var place = new Place();
        var told = Told.By(["parts", "find", .. words.Split(' '), "--db", Loaded(place)]);
        Assert.Equal((0, ""), (told.Code, told.Error));
        Assert.Equal(first, told.Out.Split('\n')[0], ignoreCase: true);
    }

    [Fact]
    public void Find_answers_in_json_no_more_than_wanted()
    {
        using var place = new Place();
        var told = Told.By("parts", "find", "brake", "--db", Loaded(place), "--most", "3", "--json");
        var found = JsonDocument.Parse(told.Out).RootElement.GetProperty("found");
        Assert.Equal(3, found.GetArrayLength());
        Assert.All(found.EnumerateArray(), f => Assert.Contains("brake", f.GetProperty("name").GetString(), StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Wants_writes_a_page_and_a_table()
    {
        using var place = new Place();
        var told = Told.By("wants", "--db", Loaded(place), "--vehicle", "quillbeck van", "--out", place.At(""), "--contact", "box 7 at the post office");
        Assert.Equal((0, ""), (told.Code, told.Error));
        Assert.Contains("Wanted for Quillbeck Works Carrier 12 cwt (1934)", File.ReadAllText(place.At("wants.html")));
        Assert.Contains("box 7 at the post office", File.ReadAllText(place.At("wants.html")));
        Assert.Equal([0xEF, 0xBB, 0xBF], File.ReadAllBytes(place.At("wants.csv"))[..3]);
        // Counted by hand in demo/parts.csv: kingpin LH and RH, pull-off spring, engine mounting rubber, headlamp RH, rear door handle.
        Assert.Equal(6 + 1, File.ReadAllLines(place.At("wants.csv")).Length);
    }

    [Theory]
    [InlineData("parts find bolt --db none.db")]
    [InlineData("parts find bolt --db van.db --vehicle tractor")]
    [InlineData("parts find bolt --db van.db --most 0")]
    [InlineData("wants --db none.db --vehicle tractor")]
    [InlineData("wants --db van.db --vehicle tractor")]
    public void What_cannot_be_done_is_one_sentence_and_nothing_is_written(string command)
    {
        using var place = new Place();
        Loaded(place);
        var told = Told.By([.. command.Split(' ').Select(a => a.EndsWith(".db", StringComparison.Ordinal) ? place.At(a) : a), .. command[0] == 'w' ? new[] { "--out", place.At("") } : []]);
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.Single(told.Error.TrimEnd('\n').Split('\n'));
        Assert.DoesNotContain(place.Files, f => f.StartsWith("wants", StringComparison.Ordinal) || f.StartsWith("none", StringComparison.Ordinal));
    }

    static string Loaded(Place place)
    {
        Assert.Equal(0, Told.By("demo", "load", "--db", place.At("van.db")).Code);
        return place.At("van.db");
    }
}
