using WitnessMark.Stores.Orders;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Orders;

public class OrderTests
{
    static readonly Guid Van = Guid.NewGuid();
    static readonly DateOnly Day = new(2031, 5, 1);
    static readonly Order Bolts = new(Guid.NewGuid(), Van, Guid.NewGuid(), Day, Day.AddDays(10), null,
        [new(1, null, "bolts", 12, new(0.5m, "EUR")), new(2, null, "gasket", 1, new(7, "GBP"))], null, "");

    static Delivery Came(int line, int count) => new(Guid.NewGuid(), Van, Bolts.Id, line, count, "", [], new(2031, 5, 4, 0, 0, 0, TimeSpan.Zero), "phone");

    static RateOfExchange Rate(string from, string to, decimal rate, int day) =>
        new(Guid.NewGuid(), Van, from, to, rate, new(2031, 5, day), "bank", new(2031, 5, day, 0, 0, 0, TimeSpan.Zero), "phone");

    [Fact]
    [Truth(Grade.Property, "what came is counted against what was ordered")]
    public void An_order_stands_by_its_deliveries()
    {
        Assert.Null(Bolts.Wrong());
        Assert.Equal(OrderState.Waiting, OrderStanding.Of(Bolts, [], Day).State);
        var part = OrderStanding.Of(Bolts, [Came(1, 5), Came(1, 4)], Day.AddDays(12));
        Assert.Equal((OrderState.PartHere, 2), (part.State, part.DaysLate));
        Assert.Equal("Part is here, still to come: 3 of 12 bolts, 1 of 1 gasket; 2 days late (expected 2031-05-11).", part.Words);
        Assert.Equal("All is here; 1 bolts too many.", OrderStanding.Of(Bolts, [Came(1, 13), Came(2, 1)], Day.AddDays(12)).Words);
    }

    [Fact]
    [Truth(Grade.Property, "the latest rate up to the day counts, either way round, and stands beside the sum")]
    public void A_sum_tells_the_day_of_its_rate()
    {
        var rates = new[] { Rate("EUR", "GBP", 0.8m, 1), Rate("GBP", "EUR", 1.25m, 3), Rate("EUR", "GBP", 0.9m, 9) };
        var sum = Exchange.Sum("GBP", Bolts.Lines.Select(l => l.Price), new(2031, 5, 2), rates).Value;
        Assert.Equal(new Money(11.80m, "GBP"), sum.Sum);
        Assert.Contains("on 2031-05-01, bank", sum.Words);
        Assert.Equal(4.80m, Exchange.To("GBP", new(6, "EUR"), new(2031, 5, 8), rates).Value.Own.Amount);
        Assert.Contains("give the rate of EUR to GBP", Exchange.Sum("GBP", [new(6, "EUR")], new(2031, 4, 30), rates).Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "bad rows are refused in words")]
    public void Senseless_money_and_dates_are_refused()
    {
        Assert.Contains("write it GBP", new Money(1, "gbp").Wrong("price")!.Sentence);
        Assert.Contains("ISO 4217", new Money(1, "XXQ").Wrong("price")!.Sentence);
        Assert.Contains("give a date", new Payment(new(1, "GBP"), default).Wrong("deposit")!.Sentence);
        Assert.Contains("must not be before", (Bolts with { Expected = Day.AddDays(-1) }).Wrong()!.Sentence);
        Assert.Contains("quantity of line 1", (Bolts with { Lines = [Bolts.Lines[0] with { Quantity = -2 }] }).Wrong()!.Sentence);
        Assert.Contains("number of its own", (Bolts with { Lines = [Bolts.Lines[0], Bolts.Lines[0]] }).Wrong()!.Sentence);
        Assert.Contains("send a list", (Bolts with { Lines = default }).Wrong()!.Sentence);
    }
}
