using System.IO.Compression;
using System.Text.Json;

namespace WitnessMark.Tests.Cli.Stores;

[Truth(Grade.Property, "demo/README.md: the borrowed bracket lacks two readings and hangs on one distance; the sheet packed is read back by survey solve")]
public class LoanTests
{
    [Fact]
    public void A_loan_is_looked_at_left_open_with_a_reason_and_packed()
    {
        using var place = new Place();
        var db = Loaded(place);
        var ready = Told.By("loan", "ready", "--db", db);
        Assert.Equal((0, ""), (ready.Code, ready.Error));
        Assert.Contains("Not ready to go back to Wendeline Orrick: 4 things still open.\n  1. Not read yet: inside between holes H1 – H6", ready.Out);
        var left = Told.By("loan", "leave", "--db", db, "--point", "4", "--because", "no camera at hand", "--json");
        var point = JsonDocument.Parse(left.Out).RootElement.GetProperty("points")[3];
        Assert.Equal(("photograph", "no camera at hand"), (point.GetProperty("kind").GetString(), point.GetProperty("not_needed").GetString()));
        Assert.Contains("3 things still open; one point marked as not needed", Told.By("loan", "ready", "--db", db).Out);
        Assert.Contains("4 things still open.", Told.By("loan", "leave", "--db", db, "--point", "4", "--open").Out);

        var packed = Told.By("loan", "pack", "--db", db, "--sample", "headlamp", "--out", place.At(""));
        Assert.Equal((0, ""), (packed.Code, packed.Error));
        using (var zip = ZipFile.OpenRead(place.At("bracket-lent-from-another-van-measured.zip")))
            zip.GetEntry("reading-sheet.csv")!.ExtractToFile(place.At("sheet.csv"));
        Assert.Contains("17 readings, redundancy 3", Told.By("survey", "solve", place.At("sheet.csv")).Out);
    }

    [Theory]
    [InlineData("loan ready --db none.db", "none.db")]
    [InlineData("loan ready --db van.db --sample gearbox", "gearbox")]
    [InlineData("loan ready --db van.db --wanted 0", "--wanted")]
    [InlineData("loan leave --db van.db --point 9 --because x", "1 to 4")]
    [InlineData("loan leave --db van.db --point 1", "reason")]
    [InlineData("loan leave --db van.db --point 1 --open", "open already")]
    public void What_cannot_be_done_is_one_sentence(string command, string named)
    {
        using var place = new Place();
        Loaded(place);
        var told = Told.By([.. command.Split(' ').Select(a => a.EndsWith(".db", StringComparison.Ordinal) ? place.At(a) : a)]);
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.Contains(named, Assert.Single(told.Error.TrimEnd('\n').Split('\n')));
    }

    static string Loaded(Place place)
    {
        Assert.Equal(0, Told.By("demo", "load", "--db", place.At("van.db")).Code);
        return place.At("van.db");
    }
}
