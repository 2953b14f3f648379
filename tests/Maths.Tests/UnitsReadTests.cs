using WitnessMark.Maths.Units;
using WitnessMark.Tests;

namespace WitnessMark.Maths.Tests;

public class UnitsReadTests
{
    [Theory, Truth(Grade.Published, "1 in = 25.4 mm exactly (international yard and pound agreement, 1959); ISO 80000-1")]
    [InlineData("3 5/16\"", 84.1375)]
    [InlineData("3-5/16 in", 84.1375)]
    [InlineData("3 5/16 in.", 84.1375)]
    [InlineData("5/16 inch", 7.9375)]
    [InlineData("9/8 in", 28.575)]
    [InlineData(".064\"", 1.6256)]
    [InlineData("0.064 in", 1.6256)]
    [InlineData("64 thou", 1.6256)]
    [InlineData("31.5", 31.5)]
    [InlineData("31,5 mm", 31.5)]
    [InlineData("31,5", 31.5)]
    [InlineData("0,250", 0.25)]
    [InlineData("12.700", 12.7)]
    [InlineData("1 ft 2 1/2 in", 368.3)]
    [InlineData("1' 2 1/2\"", 368.3)]
    [InlineData("1'-2 1/2\"", 368.3)]
    [InlineData("1′ 2½″", 368.3)]
    [InlineData("1’ 2 ½”", 368.3)]
    [InlineData("2.5 cm", 25)]
    [InlineData("1.2 m", 1200)]
    [InlineData("5 ft", 1524)]
    [InlineData("½\"", 12.7)]
    [InlineData("3⅝ in", 92.075)]
    [InlineData("3 5⁄16 in", 84.1375)]
    [InlineData("  12.7   MM ", 12.7)]
    [InlineData("3 5/16\" + 0.0042\"", 84.24418)]
    [InlineData("3 5/16\" - 0.0010\"", 84.1121)]
    [InlineData("1,250,000 thou", 31750)]
    [InlineData("⌀12.7", 12.7)]
    [InlineData("Ø 1/2 in", 12.7)]
    [InlineData("0", 0)]
    public void What_people_write_is_read(string text, double mm) => Assert.Equal(mm, Lengths.Read(text).Value.Mm, 9);

    [Fact, Truth(Grade.Published, "1 in = 25.4 mm exactly: 3 in is 76.2 mm to the last bit")]
    public void Inches_take_one_rounding() => Assert.Equal(76.2, Lengths.Read("3 in").Value.Mm);

    [Theory, Truth(Grade.CommonPractice, "what can be read two ways is refused and both readings are said")]
    [InlineData("1,250", "1.25", "1250")]
    [InlineData("1.250,5", "1250.5", "1.2505")]
    [InlineData("1,250.5", "1250.5", "1.2505")]
    [InlineData("5/8", "0.625 in (15.875 mm)", "0.625 mm")]
    [InlineData("3 5/16 mm", "3.3125 mm", "3 5/16 in")]
    [InlineData(".064", "0.064 in (1.6256 mm)", "0.064 mm")]
    [InlineData("3'", "3 feet", "3 minutes")]
    [InlineData("3 - 5/16 in", "3 and 5/16", "3 less 5/16")]
    [InlineData("1 250", "1250", "2 numbers")]
    [InlineData("30 mil", "thousandths of an inch", "mm")]
    public void Two_readings_are_refused_with_both(string text, string one, string other)
    {
        var sentence = Lengths.Read(text).Refusal!.Sentence;
        Assert.Contains(one, sentence, StringComparison.Ordinal);
        Assert.Contains(other, sentence, StringComparison.Ordinal);
    }

    [Theory, Truth(Grade.CommonPractice, "a refusal names the field, the value and what would be right")]
    [InlineData("3 in mm", "two units, in and mm")]
    [InlineData("3 mm 1/2 in", "two units, mm and in")]
    [InlineData("3 furlongs", "the unit is not known")]
    [InlineData("⌀", "number such as")]
    [InlineData("-", "number such as")]
    [InlineData("M6", "unit is not known")]
    [InlineData("mm", "number before the unit")]
    [InlineData("NaN", "unit is not known")]
    [InlineData("∞", "unit is not known")]
    [InlineData("1e3", "unit is not known")]
    [InlineData("-3 mm", "not negative")]
    [InlineData("31..5", "one decimal mark")]
    [InlineData("3 9/8 in", "less than one")]
    [InlineData("5/0 in", "lower number")]
    [InlineData("1' 14\"", "fewer than 12")]
    [InlineData("1.5' 2\"", "whole feet")]
    [InlineData("1001 m", "at most 1000 m")]
    [InlineData("123456789012345678901", "20 digits")]
    [InlineData("12 ± 0.1 ± 0.2", "one ± at most")]
    [InlineData("12 ±", "after ±")]
    [InlineData("12 ± 0", "more than nought")]
    [InlineData("12;;13", "before ;")]
    [InlineData("12 mm; 3/8 in; 7", "behind every number")]
    [InlineData("", "write a length")]
    [InlineData(null, "write a length")]
    public void Nonsense_is_refused_in_one_sentence(string? text, string says)
    {
        var refusal = Lengths.Read(text, field: "hole A").Refusal;
        Assert.NotNull(refusal);
        Assert.StartsWith("hole A: ", refusal.Sentence, StringComparison.Ordinal);
        Assert.Contains(says, refusal.Sentence, StringComparison.Ordinal);
        Assert.EndsWith(".", refusal.Sentence, StringComparison.Ordinal);
    }

    [Theory, Truth(Grade.CommonPractice, "a person who says which mark he uses is taken at his word")]
    [InlineData("1,250", DecimalMark.Comma, 1.25)]
    [InlineData("1,250", DecimalMark.Point, 1250)]
    [InlineData("1.250,5", DecimalMark.Comma, 1250.5)]
    [InlineData("1,250.5", DecimalMark.Point, 1250.5)]
    [InlineData("31.5", DecimalMark.Comma, 31.5)]
    public void A_stated_decimal_mark_settles_it(string text, DecimalMark mark, double mm) =>
        Assert.Equal(mm, Lengths.Read(text, Spelling.Usual with { Mark = mark }).Value.Mm, 9);

    [Fact, Truth(Grade.CommonPractice, "1.250 may be thousands to one who writes decimal commas")]
    public void A_point_before_three_digits_is_refused_from_comma_writers() =>
        Assert.Contains("1,250 or 1250", Lengths.Read("1.250", Spelling.Usual with { Mark = DecimalMark.Comma }).Refusal!.Sentence, StringComparison.Ordinal);

    [Fact, Truth(Grade.CommonPractice, "inch workshops write bare fractions and points without a nought")]
    public void Bare_numbers_take_the_spelling_s_unit()
    {
        var inches = Spelling.Usual with { Bare = LengthUnit.Inch };
        Assert.Equal(15.875, Lengths.Read("5/8", inches).Value.Mm, 9);
        Assert.Equal(1.6256, Lengths.Read(".064", inches).Value.Mm, 9);
        Assert.True(Lengths.Read("5/8", inches).Value.Bare);
        Assert.Contains("write the unit", Lengths.Read("12", Spelling.Usual with { Bare = null }).Refusal!.Sentence, StringComparison.Ordinal);
        Assert.Equal(-3, Lengths.Read("-3", Spelling.Usual with { Signed = true }).Value.Mm, 9);
    }

    [Fact, Truth(Grade.CommonPractice, "repeats are parted by ; and share the unit written once")]
    public void Repeats_and_plus_minus()
    {
        var read = Lengths.Read("12.70; 12.72; 12.71 mm ± .02").Value;
        Assert.Equal(12.71, read.Mm, 9);
        Assert.Equal([12.70, 12.72, 12.71], read.Repeats);
        Assert.Equal(0.02, read.PlusMinus!.Value, 9);
        Assert.Equal(0.02, Lengths.Read("12.70 +/- 0.02 mm").Value.PlusMinus!.Value, 9);
        Assert.Equal(0.396875, Lengths.Read("1/2\" ± 1/64\"").Value.PlusMinus!.Value, 9);
        Assert.Equal(0.1, Lengths.Read("1/2 in ± 0.1 mm").Value.PlusMinus!.Value, 9);
        Assert.Null(Lengths.Read("12.7").Value.PlusMinus);
        Assert.Contains("behind every number", Lengths.Read("3 ft ± 1").Refusal!.Sentence, StringComparison.Ordinal);
    }

    [Theory, Truth(Grade.Published, "ISO 80000-3: 1° = π/180 rad, 1' = 1°/60, 1'' = 1'/60")]
    [InlineData("5° 30'", 5.5)]
    [InlineData("5°30′", 5.5)]
    [InlineData("5.5°", 5.5)]
    [InlineData("5,5°", 5.5)]
    [InlineData("5 deg 30 min", 5.5)]
    [InlineData("5° 30' 36\"", 5.51)]
    [InlineData("30 min", 0.5)]
    [InlineData("90", 90)]
    [InlineData("22 1/2°", 22.5)]
    [InlineData("1.5707963267948966 rad", 90)]
    public void Angles_are_read(string text, double degrees) => Assert.Equal(degrees * Math.PI / 180, Angles.Read(text).Value.Radians, 9);

    [Theory, Truth(Grade.CommonPractice, "an angle that is none, or is two, is refused")]
    [InlineData("30'", "0° 30'")]
    [InlineData("5.5° 30'", "whole degrees")]
    [InlineData("5° 75'", "fewer than 60")]
    [InlineData("5 mm", "write an angle")]
    [InlineData("800", "two turns")]
    [InlineData("-5°", "not negative")]
    public void Bad_angles_are_refused(string text, string says) =>
        Assert.Contains(says, Angles.Read(text).Refusal!.Sentence, StringComparison.Ordinal);

    [Fact, Truth(Grade.CommonPractice, "an angle may have repeats and a ±")]
    public void Angles_with_plus_minus()
    {
        var read = Angles.Read("45.2; 45.4 ± 0.5°").Value;
        Assert.Equal(45.3 * Math.PI / 180, read.Radians, 12);
        Assert.Equal(0.5 * Math.PI / 180, read.PlusMinus!.Value, 12);
    }
}
