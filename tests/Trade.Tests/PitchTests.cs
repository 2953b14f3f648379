using WitnessMark.Tests;

namespace WitnessMark.Trade.Tests;

public class PitchTests
{
    [Theory, Truth(Grade.Published, "pitch = 25.4 mm / threads per inch (BS 84, ASME B1.1 restated)")]
    [InlineData("26 TPI", 25.4 / 26)]
    [InlineData("4 1/2 tpi", 25.4 / 4.5)]
    [InlineData("20 threads per inch", 1.27)]
    [InlineData("1.25 mm", 1.25)]
    [InlineData("1,25", 1.25)]
    [InlineData("10 threads in 12.5 mm", 1.25)]
    [InlineData("13 threads over 1/2 in", 12.7 / 13)]
    public void Pitches_are_read(string text, double mm) => Assert.Equal(mm, Pitches.Read(text).Value.Mm, 9);

    [Fact, Truth(Grade.Property, "the ± of a counted length is shared by its threads")]
    public void A_count_shares_the_plus_minus() =>
        Assert.Equal(0.01, Pitches.Read("10 threads in 12.5 ± 0.1 mm").Value.PlusMinus!.Value, 9);

    [Theory, Truth(Grade.CommonPractice, "a pitch that is none is refused")]
    [InlineData("0 TPI", "1 to 1000")]
    [InlineData("0", "26 TPI")]
    [InlineData("0 threads in 10 mm", "1 to 1000")]
    [InlineData("5 threads in 0 mm", "26 TPI")]
    [InlineData("fine", "unit is not known")]
    [InlineData("", "26 TPI")]
    public void Bad_pitches_are_refused(string text, string says) =>
        Assert.Contains(says, Pitches.Read(text).Refusal!.Sentence, StringComparison.Ordinal);
}
