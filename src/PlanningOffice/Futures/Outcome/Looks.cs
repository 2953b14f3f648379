using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>
/// Worth of looking first. The futures are parted by the finding; what is left of the spread once it is known is the mean of
/// the two parts' spreads, weighted by how many futures lie in each.
/// </summary>
sealed class Looks(Model model, Courses courses)
{
    /// <summary>Fewest futures on either side from which a part's spread is told.</summary>
    const int Fewest = 50;

    public ImmutableArray<DiscoveryForecast> All() =>
        [.. model.Finds.Select(One).OrderByDescending(d => d.Tail.Now - d.Tail.Known)];

    DiscoveryForecast One(FindLine find)
    {
        var so = Part(find, true);
        var not = Part(find, false);
        var all = Array.ConvertAll(courses.FinishOf, x => (double)x);
        var (sd, tail) = Widths(all);
        var (sdKnown, tailKnown) = (sd, tail);
        double? later = null;
        if (so.Length >= Fewest && not.Length >= Fewest)
        {
            var share = so.Length / (double)all.Length;
            var (a, b) = (Widths(so), Widths(not));
            // Variances average (the law of total variance); the root is taken of their mean.
            sdKnown = Math.Sqrt(share * a.Sd * a.Sd + (1 - share) * b.Sd * b.Sd);
            tailKnown = share * a.Tail + (1 - share) * b.Tail;
            later = so.Average() - not.Average();
        }
        return new(find.Of.Id, model.Jobs[find.Job].Id, find.Of.Words, find.Odds, model.Lines[find.Job].Hours.Mean, later, new(sd, sdKnown), new(tail, tailKnown));
    }

    double[] Part(FindLine find, bool so) =>
        [.. Enumerable.Range(0, courses.Count).Where(f => Draws.IsSo(model, find, f) == so).Select(f => (double)courses.FinishOf[f])];

    static (double Sd, double Tail) Widths(double[] days)
    {
        Array.Sort(days);
        var mean = days.Average();
        var sd = Math.Sqrt(days.Sum(x => (x - mean) * (x - mean)) / (days.Length - 1));
        return (sd, At(days, 0.9) - At(days, 0.5));
    }

    static double At(double[] sorted, double p) => sorted[(int)Math.Round(p * (sorted.Length - 1))];
}
