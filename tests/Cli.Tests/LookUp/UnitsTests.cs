using System.Text.Json;

namespace WitnessMark.Tests.Cli.LookUp;

public class UnitsTests
{
    [Fact]
    public void Says_a_fraction_in_all_units() =>
        Assert.Equal("84.1375 mm\n3.31250 in\n3 5/16\"\n", Told.By("units", "3 5/16\"").Out);

    [Fact]
    public void Says_an_angle_in_all_units() =>
        Assert.Equal("5.5000°\n5° 30'\n0.095993 rad\n", Told.By("units", "5° 30'").Out);

    [Fact]
    [Truth(Grade.Published, "International yard and pound agreement 1959: 1 in = 25.4 mm exactly")]
    public void Json_carries_the_millimetres() =>
        Assert.Equal(25.4, JsonDocument.Parse(Told.By("units", "1 in", "--json").Out).RootElement.GetProperty("mm").GetDouble(), 12);

    [Fact]
    public void What_can_be_read_two_ways_is_refused_with_both()
    {
        var told = Told.By("units", "1,250");
        Assert.Equal((2, ""), (told.Code, told.Out));
        Assert.Contains("1.25", told.Error);
        Assert.Contains("1250", told.Error);
    }

    [Fact]
    public void A_bare_number_takes_the_unit_asked_for() =>
        Assert.StartsWith("25.4000 mm", Told.By("units", "1", "--bare", "inch").Out);
}
