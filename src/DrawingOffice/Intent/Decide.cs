using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Words;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.DrawingOffice.Intent;

/// <summary>
/// What to measure when two sizes cannot be told apart. A fresh measurement of a facet, in an unworn place, moves the
/// logarithm of the odds by a Gaussian of mean ±d²/2 and variance d², d being the difference of the two sizes over the
/// standard deviation of measuring, making and slight wear together. Where the facet was measured before, that reading is
/// struck out first: it shares the item's making error, so counting both would promise too much.
/// </summary>
static class Decide
{
    const double WantedChance = 0.8;
    const int MostRivals = 4;
    const int MostItems = 20;

    public static ImmutableArray<Doubt> Between(Question question, ImmutableArray<Ranked> ranked, ImmutableArray<Evidence> evidence, Practice practice,
        Func<Ranked, Ranked, ImmutableArray<(OriginOdds Origin, double Odds)>> byOrigin) =>
    [
        .. ranked.Skip(1)
            .TakeWhile(rival => ranked[0].Probability < practice.DecisiveOdds * rival.Probability)
            .Take(MostRivals)
            .Select(rival => new Pair(question, ranked[0], rival, evidence, practice).Doubt(byOrigin(ranked[0], rival))),
    ];

    /// <summary>The facet that settles the likeliest rivals, to the finest ± that any of them needs.</summary>
    public static Decider? Next(ImmutableArray<Doubt> doubts) => doubts
        .SelectMany(doubt => doubt.Deciders.Select(decider => (Decider: decider, Settles: decider.Chance / doubt.Odds)))
        .GroupBy(d => d.Decider.Facet)
        .OrderByDescending(g => g.Sum(d => d.Settles))
        .Select(g => g.MinBy(d => d.Decider.NeededStd).Decider)
        .FirstOrDefault();

    sealed record Pair(Question Question, Ranked First, Ranked Second, ImmutableArray<Evidence> Evidence, Practice Practice)
    {
        double Odds => First.Probability / Second.Probability;

        double FirstShare => First.Probability / (First.Probability + Second.Probability);

        public Doubt Doubt(ImmutableArray<(OriginOdds Origin, double Odds)> byOrigin)
        {
            var deciders = Enum.GetValues<Facet>().Select(By).OfType<Decider>()
                .OrderByDescending(d => Math.Min(d.Chance, WantedChance)).ThenByDescending(d => d.NeededStd / d.Std).ToImmutableArray();
            var more = deciders.IsEmpty ? MoreItems() : null;
            var told = byOrigin.Where(o => o.Odds >= Practice.DecisiveOdds || o.Odds * Practice.DecisiveOdds <= 1).Sum(o => o.Origin.Probability);
            var doubt = new Doubt(First.Name, Second.Name, Odds, deciders, more, [.. byOrigin.Select(o => new OddsByOrigin(o.Origin.Name, o.Odds))], told, "");
            return doubt with { Words = Sentences.Doubtful(Question.Subject, doubt) };
        }

        Decider? By(Facet facet)
        {
            if (!Practice.Measurable(Question.Subject, facet)) return null;
            var (difference, noise) = Contrast(facet, Condition.New);
            var before = LogOddsWithout(facet);
            double Chance(double std) => ChanceToDecide(before, difference / Math.Sqrt(noise * noise + std * std));
            if (!(difference > 0) || Chance(0) < WantedChance) return null;
            var needed = Roughest(Chance, difference);
            var pitch = (First.Candidate.Pitch + Second.Candidate.Pitch) / 2 ?? 0;
            var tool = Tool.For(Question.Subject, facet, needed, pitch);
            var distance = difference / Math.Sqrt(noise * noise + tool.Std * tool.Std);
            return new Decider(facet, difference, needed, tool.Name, tool.Std, Chance(tool.Std), Sentences.Bounded(Math.Exp(before + distance * distance / 2)),
                Sentences.ToMeasure(Question.Subject, facet, needed, tool));
        }

        // How many more equal items, each measured like the first, bring the chance up.
        int? MoreItems()
        {
            var facet = Question.Principal;
            var measured = Question.Measurements.First(m => m.Facet == facet);
            var (difference, noise) = Contrast(facet, measured.Condition);
            var each = difference / Math.Sqrt(noise * noise + measured.Value.Std * measured.Value.Std);
            for (var n = 1; n <= MostItems; n++)
                if (ChanceToDecide(Math.Log(Odds), each * Math.Sqrt(n)) >= WantedChance) return n;
            return null;
        }

        (double Difference, double Noise) Contrast(Facet facet, Condition condition)
        {
            if (First.Candidate.Of(facet) is not { } a || Second.Candidate.Of(facet) is not { } b) return (0, 1);
            var allowance = Practice.For(Question.Subject, facet);
            var (pa, pb) = (First.Candidate.Pitch ?? 0, Second.Candidate.Pitch ?? 0);
            if (facet == Facet.Pitch) (pa, pb) = (a, b);
            var making = allowance.Std((a + b) / 2, (pa + pb) / 2);
            var wear = Practice.Wear(allowance, condition);
            var mean = wear.Sum(w => w.Weight * w.Scale);
            // An exponential of mean s has the second moment 2s².
            var variance = wear.Sum(w => 2 * w.Weight * w.Scale * w.Scale) - mean * mean;
            return (Math.Abs(allowance.Mean(a, pa) - allowance.Mean(b, pb)), Math.Sqrt(making * making + variance));
        }

        double LogOddsWithout(Facet facet) => Math.Log(Odds) - Evidence.Where(e => e.Facet == facet)
            .Sum(e => e.LogLikelihood(First.Candidate) - e.LogLikelihood(Second.Candidate));

        double ChanceToDecide(double before, double distance)
        {
            if (distance == 0) return 0;
            var decisive = Math.Log(Practice.DecisiveOdds);
            var shift = distance * distance / 2;
            var ifFirst = Normal.Below((before + shift - decisive) / distance);
            var ifSecond = Normal.Below((shift - before - decisive) / distance);
            return FirstShare * ifFirst + (1 - FirstShare) * ifSecond;
        }

        static double Roughest(Func<double, double> chance, double difference)
        {
            var (low, high) = (difference * 1e-4, difference * 10);
            // Chance falls as the measurement gets rougher; fifty halvings leave nothing to tell.
            for (var i = 0; i < 50 && high > low * 1.001; i++)
            {
                var middle = Math.Sqrt(low * high);
                if (chance(middle) >= WantedChance) low = middle;
                else high = middle;
            }
            return low;
        }
    }
}
