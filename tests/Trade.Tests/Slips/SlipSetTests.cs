using WitnessMark.Tests;

namespace WitnessMark.Trade.Tests.Slips;

public class SlipSetTests
{
    [Theory]
    [InlineData("m46", 46)]
    [InlineData("m47", 47)]
    [InlineData("m88", 88)]
    [InlineData("m112", 112)]
    [InlineData("e81", 81)]
    [Truth(Grade.Property, "a set is named by the number of its blocks, and holds each once")]
    public void A_set_holds_as_many_blocks_as_its_name_says(string name, int blocks)
    {
        var set = SlipSets.Of(name).Value;
        Assert.Equal(blocks, set.Blocks.Length);
        Assert.Equal(blocks, set.Blocks.Distinct().Count());
    }

    [Fact]
    [Truth(Grade.Published, "contents of the 81 set in inches (three public lessons) and of the 112 set (a worked question): runs and ends")]
    public void Published_sets_hold_their_runs()
    {
        var inch = SlipSets.Of("e81").Value;
        foreach (var size in new[] { 0.1001, 0.1009, 0.101, 0.149, 0.05, 0.95, 1, 4 }) Assert.Contains(inch.Blocks, b => Math.Abs(inch.Mm(b) - size * 25.4) < 1e-9);
        var metric = SlipSets.Of("m112").Value;
        foreach (var size in new[] { 1.0005, 1.001, 1.009, 1.01, 1.49, 0.5, 24.5, 25, 100 }) Assert.Contains(metric.Blocks, b => Math.Abs(metric.Mm(b) - size) < 1e-9);
    }

    [Theory]
    [InlineData(10, "0", 0.12)]
    [InlineData(25, "1", 0.30)]
    [InlineData(25.1, "1", 0.40)]
    [InlineData(100, "2", 1.20)]
    [InlineData(1000, "2", 8.00)]
    [Truth(Grade.Published, "public table of DIN 861 limits, which corresponds with ISO 3650; two pages agree")]
    public void Limits_are_as_published(double mm, string grade, double micrometres) => Assert.Equal(micrometres / 1000, SlipSets.Limit(mm, grade).Value, 12);

    [Fact]
    [Truth(Grade.Property, "unknown sets, grades and sizes are refused with what is known")]
    public void Unknown_names_are_refused()
    {
        Assert.Contains("m88", SlipSets.Of("m99").Refusal!.Sentence);
        Assert.Contains("0, 1, 2", SlipSets.Limit(10, "A").Refusal!.Sentence);
        Assert.False(SlipSets.Limit(1001, "1").Ok);
    }
}
