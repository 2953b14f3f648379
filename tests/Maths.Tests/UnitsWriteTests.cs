using CsCheck;
using WitnessMark.Maths.Units;
using WitnessMark.Tests;

namespace WitnessMark.Maths.Tests;

public class UnitsWriteTests
{
    static readonly Spelling Signed = Spelling.Usual with { Signed = true };

    [Theory, Truth(Grade.Published, "1 in = 25.4 mm exactly")]
    [InlineData(84.1375, "3 5/16\"")]
    [InlineData(84.24418, "3 5/16\" + 0.0042\"")]
    [InlineData(84.1121, "3 5/16\" - 0.0010\"")]
    [InlineData(25.4, "1\"")]
    [InlineData(12.7, "1/2\"")]
    [InlineData(0, "0\"")]
    [InlineData(-12.7, "-1/2\"")]
    public void Fractions_show_their_residue(double mm, string text) =>
        Assert.Equal(text, LengthWriter.Write(mm, LengthStyle.FractionInches()));

    [Fact, Truth(Grade.Published, "1 in = 25.4 mm exactly")]
    public void Other_notations()
    {
        Assert.Equal("84.14 mm", LengthWriter.Write(84.1375));
        Assert.Equal("3.3125 in", LengthWriter.Write(84.1375, LengthStyle.DecimalInches()));
        Assert.Equal("3 1/4\" + 0.0625\"", LengthWriter.Write(84.1375, LengthStyle.FractionInches(4)));
        Assert.Equal("0.00 mm", LengthWriter.Write(-0.001));
        Assert.Equal("5° 30'", AngleWriter.Write(5.5 * Math.PI / 180, AngleStyle.DegreesMinutes));
        Assert.Equal("6° 00'", AngleWriter.Write(5.9999 * Math.PI / 180, AngleStyle.DegreesMinutes));
        Assert.Equal("-0° 30'", AngleWriter.Write(-0.5 * Math.PI / 180, AngleStyle.DegreesMinutes));
    }

    [Theory, Truth(Grade.Published, "JCGM 100:2008, 7.2.6: u to at most two significant digits, the value to match (10.057 62 with u 27 m gives 10.058 and 0.027)")]
    [InlineData(10057.62, 27, "10058 ± 27 mm")]
    [InlineData(10.05762, 0.027, "10.058 ± 0.027 mm")]
    [InlineData(12.7, 0.0123, "12.700 ± 0.012 mm")]
    [InlineData(12.7, 0.00996, "12.700 ± 0.010 mm")]
    [InlineData(12.7, 0.0999, "12.70 ± 0.10 mm")]
    [InlineData(12.7, 0.1, "12.70 ± 0.10 mm")]
    [InlineData(12.7, 1, "12.7 ± 1.0 mm")]
    [InlineData(1234.5, 123, "1230 ± 120 mm")]
    [InlineData(12.7, 0, "12.70 mm")]
    public void Plus_minus_has_two_digits_and_the_value_the_same_place(double value, double std, string text) =>
        Assert.Equal(text, LengthWriter.Write(new Uncertain(value, std)));

    [Fact, Truth(Grade.Published, "JCGM 100:2008, 6.3.3: the half-width that holds some 95 of 100 is twice the standard uncertainty")]
    public void A_person_is_shown_twice_the_standard_uncertainty()
    {
        Assert.Equal("70.743 ± 0.053 mm", LengthWriter.WriteExpanded(new Uncertain(70.743, 0.0264)));
        Assert.Equal("99.837 ± 0.058°", AngleWriter.WriteExpanded(new Uncertain(99.837 * Math.PI / 180, 0.000505)));
    }

    static readonly Gen<LengthStyle> Styles = Gen.OneOf(
        Gen.Int[0, 6].Select(LengthStyle.Millimetres),
        Gen.Int[0, 6].Select(LengthStyle.DecimalInches),
        Gen.Int[0, 7].Select(p => LengthStyle.FractionInches(1 << p)));

    [Fact, Truth(Grade.Property, "read(write(x)) = x to the rounding of the style")]
    public void What_is_written_is_read_back() =>
        Gen.Select(Gen.Double[-Lengths.Longest * 0.99, Lengths.Longest * 0.99], Gen.Double[-6, 0], Styles).Sample((length, shrink, style) =>
        {
            var mm = length * Math.Pow(10, shrink);
            var read = Lengths.Read(LengthWriter.Write(mm, style), Signed).Value;
            Assert.InRange(read.Mm, mm - style.Rounding * 1.000001 - 1e-9, mm + style.Rounding * 1.000001 + 1e-9);
        }, iter: 5000);

    [Fact, Truth(Grade.Property, "read(write(value ± u)): value to half the last place of u, u to 5 %")]
    public void Value_and_plus_minus_are_read_back() =>
        Gen.Select(Gen.Double[-5000, 5000], Gen.Double[-4, 2]).Sample((value, logStd) =>
        {
            var std = Math.Pow(10, logStd);
            var read = Lengths.Read(LengthWriter.Write(new Uncertain(value, std)), Signed).Value;
            Assert.InRange(read.PlusMinus!.Value, std * 0.95, std * 1.05 + 1e-12);
            Assert.InRange(read.Mm - value, -0.051 * std, 0.051 * std);
        }, iter: 5000);

    [Fact, Truth(Grade.Property, "read(write(a)) = a: half a minute, or half the last decimal")]
    public void Angles_are_read_back() =>
        Gen.Select(Gen.Double[-12, 12], Gen.Int[0, 6]).Sample((radians, decimals) =>
        {
            const double degree = Math.PI / 180;
            var minutes = Angles.Read(AngleWriter.Write(radians, AngleStyle.DegreesMinutes), Signed).Value.Radians;
            Assert.InRange(minutes - radians, -degree / 119.99, degree / 119.99);
            var rounding = 0.5001 * Math.Pow(10, -decimals) * degree + 1e-12;
            Assert.InRange(Angles.Read(AngleWriter.Write(radians, decimals: decimals), Signed).Value.Radians - radians, -rounding, rounding);
        }, iter: 3000);

    [Theory, Truth(Grade.Property, "no length is written that is not one")]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e9)]
    public void What_is_no_length_is_refused(double mm)
    {
        Assert.Throws<RefusedException>(() => LengthWriter.Write(mm));
        Assert.Throws<RefusedException>(() => AngleWriter.Write(mm));
        Assert.Throws<RefusedException>(() => LengthWriter.Write(new Uncertain(1, double.NaN)));
    }

    static readonly Gen<string> Scribbles = Gen.OneOf(
        Gen.String,
        Gen.OneOf("1", "12", "250", "0", "/", "5/16", ".", ",", " ", "-", "+", "±", ";", "'", "\"", "½", "mm", "in", "ft", "thou", "SWG", "°", "min", "rad", "e9", "NaN", "\0", "𝟙", "٣")
            .Array[0, 12].Select(a => string.Concat(a)));

    [Fact, Truth(Grade.Property, "any text gives a finite length or one sentence, never another exception")]
    public void Scribbles_are_read_or_refused() =>
        Gen.Select(Scribbles, Gen.Enum<DecimalMark>(), Gen.Bool).Sample((text, mark, inch) =>
        {
            var how = new Spelling { Mark = mark, Bare = inch ? LengthUnit.Inch : null, Signed = inch };
            var length = Lengths.Read(text, how);
            Assert.True(length.Ok ? double.IsFinite(length.Value.Mm) && length.Value.PlusMinus is null or > 0 : length.Refusal!.Sentence.StartsWith("length: ", StringComparison.Ordinal));
            var angle = Angles.Read(text, how);
            Assert.True(angle.Ok ? double.IsFinite(angle.Value.Radians) : angle.Refusal!.Sentence.StartsWith("angle: ", StringComparison.Ordinal));
        }, iter: 20_000);
}
