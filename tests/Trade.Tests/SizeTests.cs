using System.Globalization;
using WitnessMark.Tests;

namespace WitnessMark.Trade.Tests;

public class SizeTests
{
    [Theory, Truth(Grade.Published, "Engineering ToolBox, SWG; Building Construction 3, Denominations of Standards")]
    [InlineData("10", 0.128)]
    [InlineData("14", 0.080)]
    [InlineData("16", 0.064)]
    [InlineData("18", 0.048)]
    [InlineData("20", 0.036)]
    [InlineData("27", 0.0164)]
    [InlineData("0", 0.324)]
    [InlineData("4/0", 0.400)]
    public void SWG_anchors(string number, double inch) => Assert.Equal(inch * 25.4, Gauges.Find(GaugeSeries.Swg, number)!.Mm, 6);

    /// <summary>Ounces per square foot, numbers 3 to 21.</summary>
    static readonly double[] LawOunces = [160, 150, 140, 130, 120, 110, 100, 90, 80, 70, 60, 50, 45, 40, 36, 32, 28, 24, 22];

    [Fact, Truth(Grade.Published, "15 USC 206 weights (3 to 21) over 41.82 lb per sq ft per inch (offroaders.com)")]
    public void MSG_is_the_law_s_weight_over_steel_s_density()
    {
        for (var i = 0; i < LawOunces.Length; i++)
        {
            var gauge = Gauges.Find(GaugeSeries.Msg, (i + 3).ToString(CultureInfo.InvariantCulture))!;
            Assert.InRange(gauge.Mm / 25.4 - LawOunces[i] / 16 / 41.82, -0.00006, 0.00006);
        }
    }

    [Fact, Truth(Grade.Published, "US gauge steps below 20: two ounces to 26, one to 30 (steel market page on the 1893 act)")]
    public void MSG_below_twenty_one_keeps_the_rule()
    {
        for (var n = 22; n <= 30; n++)
        {
            var ounces = n <= 26 ? 24 - 2 * (n - 20) : 12 - (n - 26);
            Assert.InRange(Gauges.Find(GaugeSeries.Msg, $"{n}")!.Mm / 25.4 - ounces / 16.0 / 41.82, -0.00006, 0.00006);
        }
    }

    [Theory, Truth(Grade.Published, "Ashmore and Allen technical data, printed mm; 5 BG is printed wrong there and left out")]
    [InlineData(4, 6.35)]
    [InlineData(10, 3.18)]
    [InlineData(16, 1.59)]
    [InlineData(18, 1.26)]
    [InlineData(20, 0.99)]
    [InlineData(22, 0.79)]
    [InlineData(24, 0.63)]
    [InlineData(27, 0.43)]
    public void BG_agrees_with_a_supplier_s_list(int number, double printed) =>
        Assert.InRange(Gauges.Find(GaugeSeries.Bg, $"{number}")!.Mm - printed, -0.02, 0.02);

    [Theory, Truth(Grade.Published, "comparison of gauges (A.W.G. column), inches to four places")]
    [InlineData("4/0", 0.46)]
    [InlineData("0", 0.3248)]
    [InlineData("1", 0.2892)]
    [InlineData("10", 0.1018)]
    [InlineData("18", 0.0403)]
    [InlineData("24", 0.0201)]
    public void AWG_formula_gives_the_printed_sizes(string number, double inch) =>
        Assert.InRange(Gauges.Find(GaugeSeries.Awg, number)!.Mm / 25.4 - inch, -0.0001, 0.0001);

    [Fact, Truth(Grade.CommonPractice, "SWG and BG of one number differ: 20 SWG 0.914 mm, 20 BG 0.996 mm")]
    public void Gauges_of_one_number_differ() =>
        Assert.True(Gauges.Find(GaugeSeries.Bg, "20")!.Mm - Gauges.Find(GaugeSeries.Swg, "20")!.Mm > 0.05);

    /// <summary>Tap drills and clearance sizes printed as decimals on two handbook pages.</summary>
    static readonly double[] Handbook =
    [
        0.0595, 0.0610, 0.0625, 0.0635, 0.0700, 0.0730, 0.0781, 0.0785, 0.0810, 0.0820, 0.0860, 0.0890, 0.0935, 0.0937, 0.1015, 0.1160, 0.1250,
        0.1285, 0.1406, 0.1470, 0.1570, 0.1610, 0.1770, 0.1890, 0.1935, 0.2010, 0.2090, 0.2130, 0.2187, 0.2570, 0.2656, 0.2720, 0.2770, 0.2812,
        0.3125, 0.3281, 0.3320, 0.3390, 0.3680, 0.3906, 0.3970, 0.4040, 0.4219, 0.4531,
    ];

    [Fact, Truth(Grade.Published, "Machinery's Handbook 31, pp. 2155 and 2168, decimals of number, letter and inch drills")]
    public void Every_drill_of_the_handbook_s_tapping_tables_is_in_the_list()
    {
        var inches = Drills.All.Select(d => d.Mm / 25.4).ToArray();
        Assert.All(Handbook, h => Assert.Contains(inches, d => Math.Abs(d - h) < 0.0001));
    }

    [Theory, Truth(Grade.Published, "UtilitiesBunker thread sizes; a number and letter drill chart; CircuitousRoot table")]
    [InlineData("No. 80 drill", 0.0135)]
    [InlineData("No. 60 drill", 0.0400)]
    [InlineData("No. 54 drill", 0.0550)]
    [InlineData("No. 43 drill", 0.089)]
    [InlineData("No. 21 drill", 0.1590)]
    [InlineData("No. 7 drill", 0.2010)]
    [InlineData("No. 1 drill", 0.2280)]
    [InlineData("A drill", 0.234)]
    [InlineData("F drill", 0.257)]
    [InlineData("Z drill", 0.413)]
    public void Drill_anchors(string name, double inch) => Assert.Equal(inch * 25.4, Drills.All.Single(d => d.Name == name).Mm, 6);

    [Fact, Truth(Grade.Published, "Wikipedia, drill bit sizes: BS 328 has 230 sizes from 0.2 to 25 mm")]
    public void Metric_drills_are_those_of_BS_328()
    {
        // The page's rule gives 230 with 25.25, 25.5 and 25.75, past the 25 mm it names as the end.
        Assert.Equal(230 - 3, Drills.Metric.Length);
        Assert.Equal(0.2, Drills.Metric[0].Mm, 9);
        Assert.Equal(25, Drills.Metric[^1].Mm, 9);
    }

    [Fact, Truth(Grade.Property, "no name twice within a room's list, sizes fall or rise all along, every size has a source")]
    public void Lists_are_whole()
    {
        NominalSize[][] lists = [[.. Gauges.Swg], [.. Gauges.Bg], [.. Gauges.Msg], [.. Gauges.Awg], [.. Drills.Number], [.. Drills.Letter], [.. Drills.Metric], [.. Drills.Fraction]];
        foreach (var list in lists)
        {
            var falling = list[0].Mm > list[^1].Mm;
            Assert.All(list.Zip(list.Skip(1)), p => Assert.True(falling ? p.First.Mm > p.Second.Mm : p.First.Mm < p.Second.Mm, $"{p.First} {p.Second}"));
            Assert.Equal(list.Length, list.DistinctBy(s => s.Name).Count());
            Assert.All(list, s => Assert.Contains(s.Source, Sources.All));
        }
        Assert.Equal(80, Drills.Number.Length);
        Assert.Equal(26, Drills.Letter.Length);
    }

    [Fact, Truth(Grade.Property, "25.4 mm to the inch: n/64 in is n × 0.396875 mm")]
    public void Fractions_are_exact_and_in_lowest_terms()
    {
        var all = Fractions.UpTo(25.4);
        Assert.Equal(64, all.Length);
        Assert.Equal("5/16 in", all.Single(f => f.Mm == 7.9375).Name);
        Assert.Equal("1 in", all[^1].Name);
        Assert.Equal([64, 32, 16, 8, 4, 2, 1], new[] { 1, 2, 4, 8, 16, 32, 64 }.Select(n => Fractions.LowestDenominator(n, 64)));
        Assert.Equal("3 5/16 in", Fractions.UpTo(100).Single(f => Math.Abs(f.Mm - 84.1375) < 1e-9).Name);
    }

    [Fact, Truth(Grade.Published, "Wikipedia, Renard series: ISO 3 divides a decade by the 20th root of 10, rounded; R5 is 1 1.6 2.5 4 6.3")]
    public void Preferred_numbers_keep_near_their_formula()
    {
        var r20 = MetricSizes.Preferred(PreferredSeries.R20, 1, 999);
        Assert.Equal(60, r20.Length);
        for (var k = 0; k < 60; k++) Assert.InRange(r20[k].Mm / Math.Pow(10, k / 20.0), 0.987, 1.013);
        Assert.Equal([1, 1.6, 2.5, 4, 6.3, 10], MetricSizes.Preferred(PreferredSeries.R5, 1, 10).Select(s => s.Mm));
    }
}
