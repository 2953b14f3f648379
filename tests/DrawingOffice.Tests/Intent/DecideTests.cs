using WitnessMark.DrawingOffice.Intent;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Intent;

/// <summary>A promised measurement must keep its promise: the pair is weighed again after it, many times over.</summary>
[Truth(Grade.Property, "Share of simulated measurements that decide, against the stated chance; bound 3.29 binomial standard deviations")]
public class DecideTests
{
    const int Trials = 800;

    static Measured Size(double mm, Condition condition = Condition.Unknown) => new(Facet.Size, new Uncertain(mm, 0.021), condition);

    [Fact]
    public void Flank_angle_decides_between_BSW_and_UNC_as_often_as_it_says()
    {
        var question = Question.Of(Subject.ExternalThread, Size(9.34), Measured.PitchByGauge(25.4 / 16, 12));
        var decided = Decided(question, Facet.Flank, out var promised);
        Assert.InRange(decided, promised - Margin(promised), promised + Margin(promised));
    }

    [Fact]
    public void Pitch_decides_between_BSW_and_BSF_as_often_as_it_says()
    {
        // A pitch so rough that it leaves both standing.
        var question = Question.Of(Subject.ExternalThread, Size(9.38), new Measured(Facet.Flank, new Uncertain(55 * Math.PI / 180, 0.01)));
        var decided = Decided(question, Facet.Pitch, out var promised);
        Assert.InRange(decided, promised - Margin(promised), promised + Margin(promised));
    }

    [Fact]
    public void Measuring_where_nothing_rubbed_decides_at_least_as_often_as_it_says()
    {
        // The first reading is struck out of the promise though it still helps a little: the promise is a floor.
        var question = Question.Of(Subject.Pin, Size(9.90, Condition.BadlyWorn));
        var decided = Decided(question, Facet.Size, out var promised);
        Assert.True(decided > promised - Margin(promised), $"{decided} against {promised}");
    }

    [Fact]
    public void More_equal_holes_are_asked_for_where_one_cannot_tell()
    {
        var told = Identify.One(Question.Of(Subject.Radius, new Measured(Facet.Size, new Uncertain(3.1, 0.15))));
        var doubt = told.Doubts[0];
        Assert.Empty(doubt.Deciders);
        Assert.InRange(doubt.MoreItems!.Value, 2, 20);
        Assert.Contains($"measure {doubt.MoreItems} more", doubt.Words);
    }

    [Fact]
    public void Origin_is_asked_for_where_it_alone_can_tell()
    {
        var told = Identify.One(Question.Of(Subject.Hole, Size(8.22)));
        var doubt = told.Doubts.First(d => d.Deciders.IsEmpty);
        Assert.True(doubt.OriginChance > 0.5);
        Assert.Contains("its origin would tell", doubt.Words);
    }

    // How often the pair comes out decided after measuring the facet at the stated precision, the truth drawn by the present odds.
    static double Decided(Question question, Facet facet, out double promised)
    {
        var before = Identify.One(question);
        var doubt = before.Doubts.First(d => d.Deciders.Any(x => x.Facet == facet));
        var decider = doubt.Deciders.First(d => d.Facet == facet);
        var (first, second) = (before.Ranked.First(r => r.Name == doubt.First), before.Ranked.First(r => r.Name == doubt.Second));
        var chance = new Chance(5);
        promised = 0.8;
        return Enumerable.Range(0, Trials).Count(_ =>
        {
            var truth = chance.Uniform() * (1 + doubt.Odds) < doubt.Odds ? first : second;
            var read = Read(question.Subject, facet, truth.Candidate, decider.NeededStd, chance);
            var after = Identify.One(question with { Measurements = question.Measurements.Add(read) });
            double Of(Ranked r) => after.Ranked.FirstOrDefault(x => x.Candidate.SameAs(r.Candidate))?.Probability ?? 1e-6;
            return Of(first) >= 20 * Of(second) || Of(second) >= 20 * Of(first);
        }) / (double)Trials;
    }

    static Measured Read(Subject subject, Facet facet, Candidate truth, double std, Chance chance)
    {
        var allowance = Practice.Usual.For(subject, facet);
        var nominal = truth.Of(facet)!.Value;
        var pitch = facet == Facet.Pitch ? nominal : truth.Pitch ?? 0;
        var wear = -allowance.WearSign * allowance.Scales[0] * Math.Log(1 - chance.Uniform());
        var read = allowance.Mean(nominal, pitch) + allowance.Std(nominal, pitch) * chance.Normal() + wear + std * chance.Normal();
        return new Measured(facet, new Uncertain(read, std), Condition.New);
    }

    static double Margin(double p) => 3.29 * Math.Sqrt(p * (1 - p) / Trials);
}
