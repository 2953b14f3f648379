using System.Collections.Immutable;
using CsCheck;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Intent;

[Truth(Grade.Property, "Bad input gets one sentence that names the field and the value, never another exception or a NaN")]
public class RefusalTests
{
    static string Refused(Func<object> ask) => Assert.Throws<RefusedException>(ask).Message;

    static Question Hole(double value, double std = 0.02) => Question.Of(Subject.Hole, new Measured(Facet.Size, new Uncertain(value, std)));

    [Theory]
    [InlineData(-8, 0.02, "size: \"-8\"")]
    [InlineData(double.NaN, 0.02, "size: \"NaN\"")]
    [InlineData(double.PositiveInfinity, 0.02, "size")]
    [InlineData(8, 0, "± of size: \"0\"")]
    [InlineData(8, double.NaN, "± of size")]
    [InlineData(8, 3, "below a quarter")]
    [InlineData(1e12, 1, "at most")]
    public void A_measurement_that_cannot_be(double value, double std, string said) =>
        Assert.Contains(said, Refused(() => Identify.One(Hole(value, std))));

    [Fact]
    public void A_thread_without_a_diameter_a_pin_with_a_pitch_no_threads_counted()
    {
        Assert.Contains("must be measured before", Refused(() => Identify.One(Question.Of(Subject.ExternalThread, Measured.PitchOver(10, new Uncertain(10, 0.02))))));
        Assert.Contains("a pin has no pitch", Refused(() => Identify.One(Question.Of(Subject.Pin,
            new Measured(Facet.Size, new Uncertain(8, 0.02)), new Measured(Facet.Pitch, new Uncertain(1, 0.01))))));
        Assert.Contains("threads counted: \"0\"", Refused(() => Measured.PitchOver(0, new Uncertain(10, 0.02))));
        Assert.Contains("length held", Refused(() => Measured.PitchByGauge(1, 0.5)));
    }

    [Fact]
    public void A_coat_or_a_condition_that_cannot_be_and_nothing_at_all()
    {
        var sheet = new Measured(Facet.Size, new Uncertain(0.9, 0.02));
        Assert.Contains("coat", Refused(() => Identify.One(Question.Of(Subject.Sheet, sheet with { Coat = new Coat("tar", 0.6, 0.1) }))));
        Assert.Contains("coat", Refused(() => Identify.One(Question.Of(Subject.Sheet, sheet with { Coat = new Coat("tar", double.NaN, 0.1) }))));
        Assert.Contains("condition: \"9\"", Refused(() => Identify.One(Question.Of(Subject.Sheet, sheet with { Condition = (Condition)9 }))));
        Assert.Contains("size", Refused(() => Identify.One(new Question(Subject.Sheet, default))));
    }

    [Fact]
    public void One_item_cannot_have_two_sizes() =>
        Assert.Contains("8 and 11", Refused(() => Identify.One(Question.Of(Subject.Pin,
            new Measured(Facet.Size, new Uncertain(8, 0.02), Condition.New), new Measured(Facet.Size, new Uncertain(11, 0.02), Condition.New)))));

    [Fact]
    public void A_prior_or_practice_that_is_none()
    {
        Assert.Contains("off-list chance", Refused(() => Identify.One(Hole(8), OriginPrior.Unknown with { OffList = 0 })));
        Assert.Contains("stray chance", Refused(() => Identify.One(Hole(8), OriginPrior.Unknown with { Stray = 2 })));
        Assert.Contains("origins", Refused(() => Identify.One(Hole(8), OriginPrior.Unknown with { Origins = [] })));
        Assert.Contains("conditions", Refused(() => Identify.One(Hole(8), practice: Practice.Usual with { Conditions = [1, 1, 1, 1] })));
        Assert.Contains("origins", Refused(() => Identify.One(Hole(8), OriginPrior.Unknown with { Origins = default })));
        Assert.Contains("conditions: nothing", Refused(() => Identify.One(Hole(8), practice: Practice.Usual with { Conditions = default })));
        Assert.Contains("allowances", Refused(() => Identify.One(Hole(8), practice: Practice.Usual with { Allowances = default })));
        Assert.Contains("decisive odds", Refused(() => Identify.One(Hole(8), practice: Practice.Usual with { DecisiveOdds = 1 })));
        var spreadless = Practice.Usual with { Allowances = [new Allowance(Subject.Hole, Facet.Size, 1, [0, 0, 0, 0])] };
        Assert.Contains("spread of making", Refused(() => Identify.One(Hole(8), practice: spreadless)));
    }

    [Fact]
    public void Whatever_is_asked_the_answer_is_a_distribution_or_a_sentence()
    {
        var facets = Gen.Enum<Facet>();
        var values = Gen.Double[-3, 6].Select(e => Math.Pow(10, e));
        var measured = Gen.Select(facets, values, Gen.Double[-5, -0.5], Gen.Enum<Condition>(), Gen.Int[0, 2])
            .Select(m => new Measured(m.Item1, new Uncertain(m.Item2, m.Item2 * Math.Pow(10, m.Item3)), m.Item4, m.Item5 == 0 ? "" : $"item {m.Item5}"));
        Gen.Select(Gen.Enum<Subject>(), measured.Array[0, 4]).Sample((subject, all) =>
        {
            try
            {
                var told = Identify.One(new Question(subject, [.. all]));
                var sum = told.OffList + told.Ranked.Sum(r => r.Probability);
                return sum is > 0.99 and < 1.000001 && told.Words.Length > 0 && told.Ranked.All(r => r.Wear.All(w => double.IsFinite(w.Value + w.Std)));
            }
            catch (RefusedException)
            {
                return true;
            }
        }, iter: 300);
    }

    [Fact]
    public void Nothing_asked_is_nothing_told() => Assert.Empty(Identify.Together(ImmutableArray<Question>.Empty).Members);
}
