using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.TakeSample;
using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.TakeSample;

using TakeSample = WitnessMark.FrontOffice.TakeSample.TakeSample;

public class TakeSampleTests
{
    static TakeResult Run(string tools) =>
        TakeSample.Run(new TakeRequest(SampleFile.Read(Demo.Bytes("samples/rear-stay.csv")).Value) { Tools = TakeSample.ToolsOf(tools) });

    [Fact]
    [Truth(Grade.Property, "the guide shows what the command gives")]
    public void The_guide_shows_the_list_of_the_rear_stay()
    {
        var (result, guide) = (Run("calliper 150, protractor"), File.ReadAllText("guide/taking.md"));
        Assert.Contains(result.Words, guide, StringComparison.Ordinal);
        foreach (var l in result.Lines)
        {
            Assert.Contains(l.Group, guide, StringComparison.Ordinal);
            Assert.Contains($"{l.Number,4}  {$"{l.Kind} {l.From} {l.To}".TrimEnd(),-40}about {l.About}", guide, StringComparison.Ordinal);
        }
    }

    [Fact]
    [Truth(Grade.Property, "every feature and every reading of the list stands on the sheet")]
    public void The_sheet_names_every_feature_and_has_a_row_for_every_reading()
    {
        var result = Run("calliper 150, tape");
        var texts = result.Sheets().SelectMany(s => s.Marks).OfType<PrintRoom.TextMark>().Select(t => t.Text).ToList();
        Assert.All(result.Sample.Features, f => Assert.Contains(f.Id, texts));
        Assert.All(result.Lines, l => Assert.Contains(l.Number.ToString(System.Globalization.CultureInfo.InvariantCulture), texts));
        Assert.All(result.Sheets(), s => Assert.Equal((210, 297), (s.Width, s.Height)));
        Assert.Equal("%PDF"u8, result.Print(null).Bytes.AsSpan(0, 4));
    }

    [Theory, InlineData("spanner"), InlineData(""), InlineData("calliper 0"), InlineData("tape -3")]
    [Truth(Grade.Property, "a refusal names the field and what would be right")]
    public void Tools_that_are_none_are_refused(string tools) =>
        Assert.StartsWith("tools", Assert.Throws<RefusedException>(() => TakeSample.ToolsOf(tools)).Message, StringComparison.Ordinal);

    [Theory, InlineData(0.0), InlineData(-1.0), InlineData(double.NaN)]
    [Truth(Grade.Property, "a refusal names the field and what would be right")]
    public void A_wanted_plus_minus_that_is_none_is_refused(double half) =>
        Assert.StartsWith("wanted ±", Assert.Throws<RefusedException>(() => TakeSample.Run(new TakeRequest(SampleFile.Read(Demo.Bytes("samples/rear-stay.csv")).Value) { WantedPlusMinus = half })).Message, StringComparison.Ordinal);
}
