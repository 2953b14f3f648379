using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Patterns.Weights;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Search;

/// <summary>Two values about equally good for one thing.</summary>
sealed record Rivals(Taken First, Hypothesis Second, double LogOdds);

/// <summary>Looks back on a finished run: takes out what the rest explains better without, and tries the neighbouring listed values.</summary>
static class Review
{
    /// <summary>Weakest conditions that are tried without; bounds the time.</summary>
    const int MostTried = 12;

    /// <summary>A listed value that is told: two to one.</summary>
    static readonly double Told = Math.Log(2);

    /// <summary>Two values whose odds are below six to one are told as undecided.</summary>
    public static readonly double Even = Math.Log(6);

    public static Course Trim(Explained way, Spread spread, CancellationToken stop)
    {
        var course = Again(way, spread, way.Course.Taken.Where(t => t.Forced || !Order.IsListed(t.Hypothesis.Kind) || t.LogOdds >= Told));
        foreach (var weak in course.Taken.Where(t => !t.Forced && t.Verdict.Freedom > 0).OrderBy(t => t.LogOdds).Take(MostTried).Select(t => t.Hypothesis).ToList())
        {
            stop.ThrowIfCancellationRequested();
            var without = Again(way, spread, course.Taken.Where(t => t.Hypothesis != weak));
            if (without.Log > course.Log) course = without;
        }
        return course;
    }

    /// <param name="neighbours">Other listed values of the same thing, for a hypothesis with one.</param>
    public static (Course Course, ImmutableArray<Rivals> Rivals) Compare(
        Explained way, Course course, Spread spread, Func<Hypothesis, IEnumerable<Hypothesis>> neighbours, Barred barred, CancellationToken stop)
    {
        var rivals = ImmutableArray.CreateBuilder<Rivals>();
        foreach (var t in course.Taken.Where(t => t.Hypothesis.Nominal is not null && !t.Forced).ToList())
        {
            stop.ThrowIfCancellationRequested();
            var rest = Again(way, spread, course.Taken.Where(o => o.Hypothesis != t.Hypothesis)).Belief;
            Verdict Weighed(Hypothesis h) => Weigher.Of([.. h.Parts.Select(p => Slope.Of(p, course.Shape, rest))], rest, rest.X);
            double Odds(Hypothesis h) => Weighed(h) is { Freedom: > 0, Contradicts: false } v ? v.Log + h.LogPrior : double.NegativeInfinity;
            var own = Odds(t.Hypothesis);
            if (double.IsNegativeInfinity(own)) continue;
            var (best, odds) = neighbours(t.Hypothesis).Select(h => (h, Odds(h))).Append((t.Hypothesis, double.NegativeInfinity)).MaxBy(h => h.Item2);
            var taken = t;
            if (odds > own && barred.IsEmpty)
            {
                taken = t with { Hypothesis = best };
                course = Again(way, spread, course.Taken.Select(o => o.Hypothesis == t.Hypothesis ? taken : o));
                (best, own, odds) = (t.Hypothesis, odds, own);
            }
            if (own - odds < Even) rivals.Add(new(taken, best, own - odds));
        }
        return (course, rivals.ToImmutable());
    }

    static Course Again(Explained way, Spread spread, IEnumerable<Taken> taken) =>
        Course.Of(way.Course.Shape, spread, way.Course.Given, taken, way.PerFreedom);
}
