using System.Text.Json;

namespace WitnessMark.Tests.Cli.Stores;

/// <summary>A typed parts list by command.</summary>
public class ImportTests
{
    const string List = "Group;Assembly;Description;Part No;Side;Off\nBrakes;Rear;Brake shoe;BR-1;N/S;2\nBrakes;Rear;Brake shoe;BR-1;O/S;2\nBrakes;Rear;Pull-off spring;BR-2;;four\n";

    [Fact]
    public void A_list_is_looked_at_taken_once_and_not_doubled()
    {
        using var place = new Place();
        var db = place.At("van.db");
        Assert.Equal(0, Told.By("demo", "load", "--db", db).Code);
        string[] import = ["parts", "import", place.Write("list.csv", List), "--db", db, "--vehicle", "quillbeck van", "--driver", "RH"];

        var looked = Told.By([.. import, "--dry-run"]);
        Assert.Equal((0, ""), (looked.Code, looked.Error));
        Assert.Contains("parted by semicolon: 2 rows can be taken, 1 refused", looked.Out);
        Assert.Contains("line 4, column 6 (Off): \"four\" is not accepted", looked.Out);
        Assert.Contains("Nothing was kept. It would be: 2 parts added", looked.Out);

        var taken = Json([.. import, "--json"]);
        Assert.Equal((2, 1, true), (taken.GetProperty("new_parts").GetInt32(), taken.GetProperty("new_assemblies").GetInt32(), taken.GetProperty("kept").GetBoolean()));
        var again = Json([.. import, "--json"]);
        Assert.Equal((0, 0, 2), (again.GetProperty("new_parts").GetInt32(), again.GetProperty("updated_parts").GetInt32(), again.GetProperty("duplicates").GetArrayLength()));
    }

    [Theory]
    [InlineData("--vehicle tram", "tram")]
    [InlineData("--vehicle 'Quillbeck van' --map Colour=part", "Colour")]
    [InlineData("--vehicle 'Quillbeck van' --map Description=ignored", "names the part")]
    [InlineData("--vehicle 'Quillbeck van' --separator and", "and")]
    [InlineData("--vehicle 'Quillbeck van' --driver middle", "middle")]
    public void What_does_not_fit_is_one_sentence(string options, string word)
    {
        using var place = new Place();
        var db = place.At("van.db");
        Assert.Equal(0, Told.By("demo", "load", "--db", db).Code);
        string[] given = [.. options.Replace("'Quillbeck van'", "Quillbeck_van").Split(' ').Select(o => o.Replace('_', ' '))];
        var told = Told.By(["parts", "import", place.Write("list.csv", List), "--db", db, .. given]);
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.Contains(word, told.Error);
    }

    static JsonElement Json(string[] args)
    {
        var told = Told.By(args);
        Assert.Equal((0, ""), (told.Code, told.Error));
        return JsonDocument.Parse(told.Out).RootElement;
    }
}
