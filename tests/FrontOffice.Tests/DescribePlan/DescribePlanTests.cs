using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.DescribePlan;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.MeasureSolid;

namespace WitnessMark.Tests.FrontOffice.DescribePlan;

using DescribePlan = WitnessMark.FrontOffice.DescribePlan.DescribePlan;
using MeasureSolid = WitnessMark.FrontOffice.MeasureSolid.MeasureSolid;

public class DescribePlanTests
{
    static readonly Sample Plate = SampleFile.Read(Demo.Bytes("samples/dynamo-plate.csv")).Value;

    static PlanInWords Of(Sample sample)
    {
        var plan = sample.Readings.IsEmpty ? null : Adjust.Solve(sample, searchMirrors: false);
        return DescribePlan.Run(sample, plan, plan is null ? null : Next.Advise(plan.Believed, 0.05));
    }

    static Sample First(int readings) => Plate with { Readings = Plate.Readings[..readings] };

    [Fact]
    public void Every_feature_is_told_once_by_its_kind_and_name()
    {
        var words = Of(Plate);
        Assert.Equal(Plate.Features.Select(f => f.Id), words.Features.Select(f => f.Id));
        Assert.All(words.Features, f => Assert.Matches($"^(corner|hole|slot|edge|arc) {f.Id}\\b.*\\.$", f.Line));
    }

    [Fact]
    [Truth(Grade.Property, "the words carry the figures of the plan they tell")]
    public void The_words_carry_the_figures_of_the_plan()
    {
        var plan = Adjust.Solve(Plate, searchMirrors: false).Believed;
        foreach (var (told, f) in Of(Plate).Features.Zip(Plate.Features).Where(x => x.Second.Kind == FeatureKind.Hole))
            Assert.Contains($"diameter {plan.Of(f.Id).Size!.Value.Value:0.00} ± ", told.Line, StringComparison.Ordinal);
    }

    [Fact]
    public void The_misread_reading_is_told_with_what_the_others_make_it()
    {
        var doubts = Assert.Single(Of(Plate).Groups, g => g.Title == "Doubtful readings");
        Assert.Contains("Read it again.", Assert.Single(doubts.Lines), StringComparison.Ordinal);
        Assert.Contains("the others make it", doubts.Lines[0], StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_reading_changes_is_told_in_one_breath()
    {
        Assert.StartsWith("The paper is empty", Of(Plate with { Features = [], Readings = [] }).Headline, StringComparison.Ordinal);
        var none = Of(First(0));
        Assert.EndsWith("no reading counts yet.", none.Headline, StringComparison.Ordinal);
        var before = none;
        for (var n = 1; n <= Plate.Readings.Length; n++)
        {
            var now = Of(First(n));
            Assert.InRange(now.Since(before).Length, 0, 900);
            before = now;
        }
        Assert.Equal("", before.Since(before));
        Assert.Equal(before.Headline, before.Since(null));
    }

    [Fact]
    public void What_is_loose_is_told_with_how_many_readings_would_hold_it()
    {
        var words = Of(First(3));
        Assert.Contains(words.Features, f => f.State == "can still move");
        var loose = Assert.Single(words.Groups, g => g.Title == "Not held yet");
        Assert.All(loose.Lines, l => Assert.Matches("can move together in \\d+ ways?; \\d+ readings? would hold", l));
    }

    [Fact]
    public void A_bracket_in_space_is_told_too()
    {
        var sample = SolidFile.Read(Demo.Bytes("samples/step-bracket.csv"), name => Demo.Bytes($"samples/{name}")).Value;
        var words = DescribeSolid.Run(MeasureSolid.Run(new(sample)));
        Assert.NotEmpty(words.Features);
        Assert.Contains(words.Features, f => f.Line.Contains(" up ± ", StringComparison.Ordinal));
        Assert.StartsWith("Nothing stands", DescribeSolid.Run(null).Headline, StringComparison.Ordinal);
    }
}
