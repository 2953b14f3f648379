using WitnessMark.FrontOffice.PackConsignment;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Letters;
using WitnessMark.PrintRoom.Shapes;
using WitnessMark.Stores.Orders;
using WitnessMark.Stores.Outwork;
using Pack = WitnessMark.FrontOffice.PackConsignment.PackConsignment;

namespace WitnessMark.Tests.FrontOffice.PackConsignment;

[Truth(Grade.Property, "two like copies on the paper, nothing outside it, every line and caution on both")]
public sealed class PackConsignmentTests
{
    static readonly Firm Plater = new(Guid.NewGuid(), Guid.NewGuid(), "the plater in the valley", "plating", "", "");

    static PackRequest Asked(int lines, string finish = "bright zinc, 8 micrometre") => new(
        new(Guid.NewGuid(), Plater.VehicleId, Plater.Id, OutTrade.Plating, new(2031, 3, 1), new(2031, 4, 1), new(120, "GBP"), "all of one shade", true, false,
            [.. Enumerable.Range(1, lines).Select(n => new ConsignmentLine(n, null, $"bolt of sort {n}", n, finish, "threads", []))]),
        Plater, "the van", new(2031, 2, 28));

    [Theory]
    [InlineData(1), InlineData(12), InlineData(80)]
    public void Both_copies_say_the_same_on_their_half(int lines)
    {
        var sheets = Pack.Run(Asked(lines)).Sheets;
        foreach (var sheet in sheets)
        {
            var words = sheet.Marks.OfType<TextMark>().Where(t => t.Text != "cut here").ToLookup(t => t.At.Y > 148.5, t => t);
            Assert.Equal(words[true].Select(t => t.Text).SkipLast(1), words[false].Select(t => t.Text).SkipLast(1));
            Assert.All(words.SelectMany(w => w), t => Assert.True(new Box(5, 5, 205, 292).Holds(Lettering.Bounds(t)!.Value), t.Text));
        }
        for (var n = 1; n <= lines; n++) Assert.Equal(2, sheets.Sum(s => s.Marks.OfType<TextMark>().Count(t => t.Text == $"bolt of sort {n}")));
        Assert.Contains("Hydrogen embrittlement", string.Join(' ', sheets.SelectMany(s => s.Marks).OfType<TextMark>().Select(t => t.Text)));
    }

    [Fact]
    public void Long_words_flow_on() => Assert.True(Pack.Run(Asked(3, new string('W', 2000))).Sheets.Length > 1);

    [Fact]
    public void A_box_for_another_firm_is_refused() =>
        Assert.Throws<RefusedException>(() => Pack.Run(Asked(1) with { Firm = Plater with { Id = Guid.NewGuid() } }));
}
