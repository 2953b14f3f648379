using WitnessMark.Tests;
using WitnessMark.Web.Client.Shell.Finding;
using WitnessMark.Web.Client.Shell.Ways;

namespace WitnessMark.Web.Tests.Shell;

public sealed class FindTests
{
    static readonly FindIndex Index = FindIndex.Of(
    [
        new("Parts", "Dynamo mounting plate", "Engine", "Q12-3310, Shelf C", "p1"), new("Parts", "Cab door LH", "Body", "", "p2"),
        new("Notes", "The lug was bent by a jack", "Dynamo mounting plate", "The lug was bent by a jack, and somebody hammered it back", "n1"),
        new("Pages", "Odds", "", "futures forecast finish", "planning"), new("Do", "Quick add", "", "note", ":add"),
    ]);

    [Theory]
    [InlineData("dinamo mountng", "p1", "“dinamo” read as “Dynamo”, “mountng” read as “mounting”")]
    [InlineData("hammerd", "n1", "“…by a jack, and somebody hammered it back”")]
    [InlineData("forecast", "planning", "“futures forecast finish”")]
    [InlineData("door", "p2", "")]
    [InlineData("quick", ":add", "")]
    [Truth(Grade.Property, "what was asked stands, spelt otherwise, in the thing that is found, and the reason says where")]
    public void A_thing_is_found_and_says_why(string asked, string address, string why)
    {
        var hit = Index.Find(asked)[0];
        Assert.Equal((address, why), (hit.Of.Address, hit.Why));
    }

    [Fact]
    [Truth(Grade.Property, "a word that stands as it was asked is no misspelling of another")]
    public void Misspelt_readings_are_left_out_where_the_word_itself_stands() =>
        Assert.Equal(["b"], FindIndex.Of([new("Parts", "Brake drum", "", "", "a"), new("Parts", "Bracket", "", "", "b")]).Find("bracket").Select(h => h.Of.Address));

    [Fact]
    public void Nothing_like_it_finds_nothing() => Assert.Empty(Index.Find("xylophone"));

    [Theory]
    [InlineData("vehicle/11111111-1111-1111-1111-111111111111/part/22222222-2222-2222-2222-222222222222/sample/33333333-3333-3333-3333-333333333333?sheet=drawing", 'B')]
    [InlineData("vehicle/11111111-1111-1111-1111-111111111111/samples", 'B')]
    [InlineData("vehicle/11111111-1111-1111-1111-111111111111/pictures", 'E')]
    [InlineData("vehicle/11111111-1111-1111-1111-111111111111/pairs/22222222-2222-2222-2222-222222222222", 'E')]
    [InlineData("vehicle/11111111-1111-1111-1111-111111111111/part/22222222-2222-2222-2222-222222222222", 'A')]
    [InlineData("", 'A')]
    [InlineData("planning/next", 'C')]
    [InlineData("shop", 'D')]
    [InlineData("settings", null)]
    public void A_page_belongs_to_its_office(string path, char? letter) => Assert.Equal(letter, Office.Of(path)?.Letter);

    [Fact]
    public void An_address_says_what_its_page_is_about()
    {
        var (vehicle, part) = (Guid.NewGuid(), Guid.NewGuid());
        Assert.Equal(new Spot(vehicle, part, null), Spot.Of($"vehicle/{vehicle}/part/{part}?open={Guid.NewGuid()}#top"));
        Assert.Equal(default, Spot.Of("planning/next"));
    }
}
