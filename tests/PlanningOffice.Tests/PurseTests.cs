using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests;

public sealed class PurseTests
{
    static readonly Purse Pounds = Means.Usual(Guid.Empty).Purse;

    [Theory]
    [InlineData("XQX", "EUR", 1, "XQX")]
    [InlineData("gbp", "EUR", 1, "write it GBP")]
    [InlineData("GBP", "EUX", 1, "EUX")]
    [InlineData("GBP", "EUR", 0, "needs its day")]
    [Truth(Grade.Published, "ISO 4217: the codes of currencies; a rate without its day says nothing")]
    public void A_currency_nobody_pays_in_and_a_rate_without_a_day_are_refused(string own, string other, int day, string words)
    {
        var purse = Pounds with { Currency = own, Rates = [new(other, 0.87, day == 0 ? default : new(2031, 5, 4))] };
        Assert.Contains(words, purse.Wrong!.Sentence);
        Assert.Null((Pounds with { Rates = [new("EUR", 0.87, new(2031, 5, 4))] }).Wrong);
    }
}
