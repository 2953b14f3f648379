using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent;
using WitnessMark.DrawingOffice.Intent.Tables;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Tests.Intent;

/// <summary>A part as it was really made, and the question a restorer asks about it. <c>Made</c> is null off the lists.</summary>
sealed record Simulated(Candidate? Made, Question Question);

/// <summary>
/// Makes and wears parts by chance, by a prior and a practice of its own: nominal, making error, wear, measuring error drawn
/// one after another, with nothing taken from the likelihood under test.
/// </summary>
/// <param name="items">Equal items, each with its own making error.</param>
/// <param name="places">Places measured on each item, each with its own wear.</param>
sealed class Workshop(Subject subject, OriginPrior prior, Practice practice, Chance chance, int items = 1, int places = 1)
{
    const double Smallest = 2, Largest = 40;

    static readonly double[] CalliperAndMicrometer = [0.021, 0.005];

    readonly Facet _principal = subject == Subject.InternalThread ? Facet.Core : Facet.Size;
    readonly bool _thread = subject is Subject.ExternalThread or Subject.InternalThread;
    readonly ImmutableArray<Candidate> _sizes =
        Catalogue.Between(subject, subject == Subject.InternalThread ? Facet.Core : Facet.Size, Smallest, Largest);

    /// <summary>Parts whose reading lies well inside the range of sizes made, so that no size beyond it is missed.</summary>
    public IEnumerable<Simulated> Parts(int count)
    {
        var weights = Weights();
        while (count > 0)
        {
            var part = Make(weights);
            if (part.Question.Measurements[0].Value.Value is < Smallest * 1.3 or > Largest / 1.3) continue;
            count--;
            yield return part;
        }
    }

    // Prior weight of each size, and last of being off the lists: a logarithmically even spread over the range.
    double[] Weights()
    {
        var series = Catalogue.SeriesOf(subject);
        var all = prior.Origins.Sum(o => o.Weight);
        double Share(Origin o, string s) => series.Sum(o.Share) is var sum and > 0 ? o.Share(s) / sum : 1.0 / series.Length;
        double Anyone(string s) => prior.Origins.Sum(o => o.Weight / all * Share(o, s));
        double Of(Candidate c) => (1 - prior.OffList) * c.Mass
            * prior.Origins.Sum(o => o.Weight / all * ((1 - prior.Stray) * Share(o, c.Series) + prior.Stray * Anyone(c.Series)));
        return [.. _sizes.Select(Of), prior.OffList * Math.Log(Largest / Smallest)];
    }

    Simulated Make(double[] weights)
    {
        var drawn = Draw(weights);
        var made = drawn < _sizes.Length ? _sizes[drawn] : null;
        var size = made?.Of(_principal) ?? Smallest * Math.Pow(Largest / Smallest, chance.Uniform());
        var pitch = made?.Pitch ?? 0.2 * Math.Pow(32, chance.Uniform());
        var measured = Enumerable.Range(0, items).SelectMany(item => Measure(_principal, size, _thread ? pitch : 0, $"item {item}")).ToImmutableArray();
        if (_thread) measured = measured.Add(Measure(Facet.Pitch, pitch, pitch, "").First());
        return new Simulated(made, new Question(subject, measured));
    }

    IEnumerable<Measured> Measure(Facet facet, double nominal, double pitch, string item)
    {
        var allowance = practice.For(subject, facet);
        var made = allowance.Mean(nominal, pitch) + allowance.Std(nominal, pitch) * chance.Normal();
        return Enumerable.Range(0, places).Select(_ => Place(facet, nominal, made, item));
    }

    Measured Place(Facet facet, double nominal, double made, string item)
    {
        var allowance = practice.For(subject, facet);
        var condition = (Condition)(1 + Draw([.. practice.Conditions]));
        var std = facet == Facet.Pitch ? 0.005 * nominal : CalliperAndMicrometer[chance.Below(2)];
        var wear = -allowance.Scales[(int)condition - 1] * Math.Log(1 - chance.Uniform());
        var read = made + allowance.WearSign * wear + std * chance.Normal();
        return new Measured(facet, new Uncertain(read, std), chance.Uniform() < 0.5 ? condition : Condition.Unknown, item);
    }

    int Draw(double[] weights)
    {
        var left = chance.Uniform() * weights.Sum();
        for (var i = 0; i < weights.Length - 1; i++)
            if ((left -= weights[i]) < 0) return i;
        return weights.Length - 1;
    }
}
