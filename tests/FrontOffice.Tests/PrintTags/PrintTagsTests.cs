using WitnessMark.FrontOffice.PrintTags;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Tags;
using WitnessMark.Stores.Places;
using WitnessMark.Stores.Tags;
using Tags = WitnessMark.FrontOffice.PrintTags.PrintTags;

namespace WitnessMark.Tests.FrontOffice.PrintTags;

[Truth(Grade.Property, "a thing keeps its code; a tag opens what it was printed for; nothing wrong is printed")]
public sealed class PrintTagsTests
{
    static readonly Guid Van = Guid.NewGuid();
    static readonly DateTimeOffset Now = new(2031, 3, 1, 9, 0, 0, TimeSpan.Zero);

    static PrintTagsRequest Asked(int things) => new(
        Van, [.. Enumerable.Range(1, things).Select(n => TagWanted.Of(new Place(new(n, 0, 0, new byte[8]), Van, PlaceKind.Bin, $"B{n}", null, "left wall")))],
        [], LabelGrid.Read("38.1x21.2").Value, 1, Now, "bench");

    [Fact]
    public void Printed_again_the_codes_stay()
    {
        var first = Tags.Run(Asked(70));
        Assert.Equal((70, 70, 2), (first.Tags.Length, first.New.Length, first.Sheets.Length));
        Assert.All(first.New, t => Assert.Null(t.Wrong()));
        var again = Tags.Run(Asked(71) with { Standing = first.New, At = Now.AddDays(1), Device = "phone" });
        Assert.Equal(first.Tags, again.Tags[..70]);
        Assert.Equal("B71", Assert.Single(again.New).Words);
        Assert.Equal(71, again.Tags.Select(t => t.Code).Distinct().Count());
        Assert.Equal("B3", TagBook.Find(TagSpelling.Printed(again.Tags[2].Code), again.Tags).Value.Words);
    }

    [Fact]
    public void Many_tags_are_quick()
    {
        var many = Tags.Run(Asked(5000));
        Assert.Equal(5000, many.Tags.Select(t => t.Code).Distinct().Count());
        Assert.Throws<RefusedException>(() => Tags.Run(Asked(10_001)));
    }

    [Theory]
    [InlineData("ftp://10.0.0.1"), InlineData("van"), InlineData("https://10.0.0.1/?a=b"), InlineData("")]
    public void A_wrong_address_is_refused(string address) =>
        Assert.Contains("give an address", Assert.Throws<RefusedException>(() => Tags.Run(Asked(1) with { Address = address })).Message);

    [Fact]
    public void An_address_is_drawn_with_more_modules_than_a_bare_code()
    {
        int Marks(string? address) => Tags.Run(Asked(1) with { Address = address }).Sheets[0].Marks.OfType<PathMark>().Count();
        Assert.True(Marks("https://192.168.1.20:5001/") > Marks(null));
        Assert.Throws<RefusedException>(() => Tags.Run(Asked(0)));
    }
}
