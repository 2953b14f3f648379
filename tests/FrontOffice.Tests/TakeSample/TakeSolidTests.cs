using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.FrontOffice.TakeSample;
using WitnessMark.Maths;

namespace WitnessMark.Tests.FrontOffice.TakeSample;

public class TakeSolidTests
{
    static SolidTakeResult Run() => TakeSolid.Run(new SolidTakeRequest(SolidFile.Read(Demo.Bytes("samples/step-bracket-sketch.csv")).Value));

    [Fact]
    [Truth(Grade.Property, "the guide shows what the command gives")]
    public void The_guide_shows_the_list_of_the_step_bracket()
    {
        var (result, guide) = (Run(), File.ReadAllText("guide/taking.md"));
        Assert.True(result.List.Complete);
        Assert.Contains(result.Words, guide, StringComparison.Ordinal);
        foreach (var l in result.Lines)
        {
            Assert.Contains(l.Group, guide, StringComparison.Ordinal);
            Assert.Contains($"{l.Number,4}  {$"{l.Kind} {l.From} {l.To}".TrimEnd(),-40}about {l.About}", guide, StringComparison.Ordinal);
        }
    }

    [Fact]
    [Truth(Grade.Property, "every corner, hole and face and every reading of the list stands on the sheet")]
    public void The_sheet_names_every_feature_and_has_a_row_for_every_reading()
    {
        var result = Run();
        var texts = result.Sheets().SelectMany(s => s.Marks).OfType<PrintRoom.TextMark>().Select(t => t.Text).ToList();
        string[] names = [.. result.Sample.Features.Where(f => f.Id[0] is 'P' or 'H').Select(f => f.Id), "face A", "face B", "face C"];
        Assert.All(names, n => Assert.Contains(n, texts));
        Assert.All(result.Lines, l => Assert.Contains(l.Number.ToString(System.Globalization.CultureInfo.InvariantCulture), texts));
        Assert.Contains("Height gauge on the plate, set-up S1", texts);
        Assert.Equal("%PDF"u8, result.Print(null).Bytes.AsSpan(0, 4));
    }

    [Theory]
    [InlineData("step-bracket.csv", true), InlineData("step-bracket-sketch.csv", true), InlineData("rear-stay.csv", false), InlineData("dynamo-plate.csv", false), InlineData("lamp-bracket.csv", false)]
    [Truth(Grade.Property, "the demo's sheets, each of one kind")]
    public void A_sheet_in_space_is_told_from_a_flat_one(string name, bool inSpace) =>
        Assert.Equal(inSpace, SolidFile.Is(Demo.Text($"samples/{name}")));

    [Theory, InlineData(0.0), InlineData(double.NaN)]
    [Truth(Grade.Property, "a refusal names the field and what would be right")]
    public void A_wanted_plus_minus_that_is_none_is_refused(double half) =>
        Assert.StartsWith("wanted ±", Assert.Throws<RefusedException>(() => TakeSolid.Run(new SolidTakeRequest(new("s", "", [], [])) { WantedPlusMinus = half })).Message, StringComparison.Ordinal);
}
