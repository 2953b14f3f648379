using CsCheck;
using WitnessMark.Maths.Units;
using WitnessMark.Tests;

namespace WitnessMark.Trade.Tests;

public class SpellingTests
{
    [Theory, Truth(Grade.Published, "SWG, BG, MSG tables restated (docs/sources.md); inch × 25.4")]
    [InlineData("14 SWG", 2.032)]
    [InlineData("14swg", 2.032)]
    [InlineData("SWG 14", 2.032)]
    [InlineData("No. 14 S.W.G.", 2.032)]
    [InlineData("4/0 swg", 10.16)]
    [InlineData("20 BG", 0.99568)]
    [InlineData("16 MSG", 1.51892)]
    [InlineData("18 AWG", 1.0237)]
    [InlineData("14 BWG", 2.1082)]
    [InlineData("No. 43 drill", 2.2606)]
    [InlineData("#43 drill", 2.2606)]
    [InlineData("drill 43", 2.2606)]
    [InlineData("F drill", 6.5278)]
    [InlineData("letter F drill", 6.5278)]
    [InlineData("3 5/16\"", 84.1375)]
    [InlineData("31.5", 31.5)]
    public void Names_of_the_trade_are_sizes(string text, double mm) =>
        Assert.Equal(mm, Lengths.Read(text, TradeSpelling.Of()).Value.Mm, 4);

    [Theory, Truth(Grade.CommonPractice, "gauge alone is said of SWG, BG and MSG alike; a number alone of drills and screws too")]
    [InlineData("16 gauge", "16 SWG (1.626 mm)", "16 BG (1.588 mm)", "16 MSG (1.519 mm)")]
    [InlineData("20 ga", "20 SWG (0.914 mm)", "20 BG (0.996 mm)", "20 MSG (0.912 mm)")]
    [InlineData("#10", "10 SWG (3.251 mm)", "No. 10 drill (4.915 mm)", "write which")]
    [InlineData("62 SWG", "7/0 SWG", "40 SWG", "62 SWG")]
    [InlineData("81 drill", "No. 80", "No. 1", "Z")]
    [InlineData("99 gauge", "of any list", "SWG", "AWG")]
    [InlineData("14 SWG ± 0.05", "behind every number", "14 SWG", ".")]
    public void Names_that_are_two_or_none_are_refused(string text, string one, string other, string third)
    {
        var sentence = Lengths.Read(text, TradeSpelling.Of(), "thickness").Refusal!.Sentence;
        Assert.All((string[])[one, other, third], s => Assert.Contains(s, sentence, StringComparison.Ordinal));
    }

    [Fact, Truth(Grade.CommonPractice, "a gauge may carry a ± and repeats")]
    public void A_gauge_may_have_a_plus_minus() =>
        Assert.Equal(0.05, Lengths.Read("14 SWG ± 0.05 mm", TradeSpelling.Of()).Value.PlusMinus!.Value, 9);

    [Fact, Truth(Grade.Property, "every gauge and drill of the lists is read back by its name")]
    public void Every_listed_name_is_read_back()
    {
        foreach (var size in Gauges.All.Concat(Drills.Number).Concat(Drills.Letter))
            Assert.Equal(size.Mm, Lengths.Read(size.Name, TradeSpelling.Of()).Value.Mm, 12);
        foreach (var size in Fractions.UpTo(100).Concat(MetricSizes.UpTo(50, 2)))
            Assert.Equal(size.Mm, Lengths.Read(size.Name, TradeSpelling.Of()).Value.Mm, 9);
    }

    static readonly Gen<string> Scribbles =
        Gen.OneOf("1", "14", "99", "/0", "#", "no.", " ", "swg", "b.g.", "gauge", "drill", "f", "letter", "±", ";", "mm", "&")
            .Array[0, 8].Select(a => string.Concat(a));

    [Fact, Truth(Grade.Property, "any text gives a finite size or one sentence, never another exception")]
    public void Scribbles_are_read_or_refused() => Scribbles.Sample(text =>
    {
        var read = Lengths.Read(text, TradeSpelling.Of());
        Assert.True(read.Ok ? double.IsFinite(read.Value.Mm) : read.Refusal!.Sentence.EndsWith('.'));
    }, iter: 10_000);
}
