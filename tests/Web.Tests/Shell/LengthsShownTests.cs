using System.Reflection;
using WitnessMark.Maths.Units;
using WitnessMark.Tests;
using WitnessMark.Web.Client.Shell.Settings;

namespace WitnessMark.Web.Tests.Shell;

/// <summary>Alone in its collection: the wish stands once for the whole app.</summary>
[Collection(nameof(LengthsShownTests))]
public sealed class LengthsShownTests : IDisposable
{
    static void As(LengthsIn wish) => typeof(LengthsShown).GetProperty(nameof(LengthsShown.As), BindingFlags.Static | BindingFlags.Public)!.SetValue(null, wish);

    [Theory]
    [InlineData(LengthsIn.Millimetres, "84.14 mm", "± 0.060 mm")]
    [InlineData(LengthsIn.DecimalInches, "3.313 in", "± 0.0024 in")]
    [InlineData(LengthsIn.FractionInches, "3 5/16\"", "± 0.0024 in")]
    [InlineData(LengthsIn.Both, "84.14 mm (3.313 in)", "± 0.060 mm (0.0024 in)")]
    [Truth(Grade.Published, "1 inch is 25.4 mm (ISO 31); two figures of a ± (JCGM 100, 7.2.6)")]
    public void A_length_is_shown_as_wished(LengthsIn wish, string length, string plusMinus)
    {
        As(wish);
        Assert.Equal((length, plusMinus), (LengthsShown.Write(84.14), LengthsShown.PlusMinus(0.06)));
    }

    [Theory]
    [InlineData(LengthsIn.DecimalInches)]
    [InlineData(LengthsIn.FractionInches)]
    [InlineData(LengthsIn.Millimetres)]
    [Truth(Grade.Property, "what is shown, typed again, is understood as the same length to its rounding")]
    public void What_is_shown_is_understood_when_it_is_typed(LengthsIn wish)
    {
        As(wish);
        for (var mm = 0.37; mm < 900; mm *= 1.9)
            Assert.Equal(mm, Lengths.Read(LengthsShown.Write(mm), field: "length").Value.Mm, 0.02);
    }

    [Fact]
    public void Nothing_but_a_length_that_is_not_known_is_a_question_mark() => Assert.Equal("± ? mm", LengthsShown.PlusMinus(double.PositiveInfinity));

    public void Dispose() => As(LengthsIn.Millimetres);
}
