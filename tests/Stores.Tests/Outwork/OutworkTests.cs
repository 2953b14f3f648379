using WitnessMark.Stores.Outwork;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Outwork;

public class OutworkTests
{
    static readonly DateOnly Day = new(2031, 5, 1);
    static readonly Consignment Box = new(
        Guid.NewGuid(), Guid.NewGuid(), Guid.NewGuid(), OutTrade.Plating, Day, Day.AddDays(20), new(80, "GBP"), "", false, false,
        [new(1, null, "bolts", 12, "zinc", "threads", []), new(2, Guid.NewGuid(), "bonnet catch", 1, "nickel", "", [])]);

    static ConsignmentReturn Back(int line, int count, string damage = "") =>
        new(Guid.NewGuid(), Box.VehicleId, Box.Id, line, count, damage, [], new(2031, 5, 22, 0, 0, 0, TimeSpan.Zero), "phone");

    static IEnumerable<string> Said(params ConsignmentReturn[] back) => ConsignmentStanding.Of(Box, back).Words(Day.AddDays(21));

    [Fact]
    [Truth(Grade.Property, "counted out and in, line by line; what is missing is told once something has come back")]
    public void What_is_missing_on_return_is_told()
    {
        Assert.Equal(["0 of 13 are back; expected on 2031-05-21, 1 day ago."], Said());
        Assert.Equal(["11 of 13 are back; expected on 2031-05-21, 1 day ago.", "Missing on return: 2 of 12 bolts; ask before the firm clears its bench."], Said(Back(1, 6), Back(1, 4), Back(2, 1)));
        Assert.Equal(["All 13 are back.", "3 bolts more came back than went out: look whose they are.", "bonnet catch: edge bent."], Said(Back(1, 15), Back(2, 1, "edge bent")));
        Assert.Contains("A return names line 7, which is not on the list: 1 came back.", Said(Back(7, 1)));
        Assert.True(ConsignmentStanding.Of(Box, [Back(1, 12), Back(2, 1)]).AllBack);
        Assert.Empty(ConsignmentStanding.Of(Box, [Back(1, 12) with { ConsignmentId = Guid.NewGuid() }]).Lines.Where(l => l.Back > 0));
    }

    [Fact]
    [Truth(Grade.CommonPractice, "what the trades warn of: hydrogen in plated high-tensile steel, asbestos in old linings, heat on hardened steel, fuel tanks")]
    public void Cautions_follow_the_trade_and_what_is_in_the_box()
    {
        string Of(OutTrade trade, bool tensile = false, bool linings = false) =>
            string.Join('\n', OutCautions.For(Box with { Trade = trade, HighTensile = tensile, OldLinings = linings }));
        Assert.Contains("Hydrogen", Of(OutTrade.Plating, tensile: true));
        Assert.DoesNotContain("Hydrogen", Of(OutTrade.Plating));
        Assert.Contains("asbestos", Of(OutTrade.Relining));
        Assert.Contains("asbestos", Of(OutTrade.Blasting, linings: true));
        Assert.Contains("temper", Of(OutTrade.PowderCoating, tensile: true));
        Assert.Contains("temper", Of(OutTrade.Welding, tensile: true));
        Assert.DoesNotContain("temper", Of(OutTrade.Welding));
        Assert.Contains("explodes", Of(OutTrade.Welding));
        Assert.All(Enum.GetValues<OutTrade>(), t => Assert.Contains("Count and photograph", Of(t)));
        Assert.All(Enum.GetValues<OutTrade>(), t => Assert.NotEmpty(t.Words()));
    }

    [Fact]
    [Truth(Grade.Property, "a box that cannot be is refused in words")]
    public void Senseless_boxes_are_refused()
    {
        Assert.Null(Box.Wrong());
        Assert.Contains("at least one thing", (Box with { Lines = [] }).Wrong()!.Sentence);
        Assert.Contains("must not be before the day it went out", (Box with { ExpectedBack = Day.AddDays(-1) }).Wrong()!.Sentence);
        Assert.Contains("count of line 1", (Box with { Lines = [Box.Lines[0] with { Count = 0 }] }).Wrong()!.Sentence);
        Assert.Contains("number of its own", (Box with { Lines = [Box.Lines[0], Box.Lines[0]] }).Wrong()!.Sentence);
        Assert.Contains("currency", (Box with { Quoted = new(1, "QQQ") }).Wrong()!.Sentence);
        Assert.Contains("firm", (Box with { FirmId = Guid.Empty }).Wrong()!.Sentence);
        Assert.Contains("picture", (Box with { Lines = [Box.Lines[0] with { Pictures = ["x.jpg"] }] }).Wrong()!.Sentence);
        Assert.Contains("count that came back", (Back(1, 1) with { Count = -1 }).Wrong()!.Sentence);
    }
}
