using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Patterns.Offers;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Search;

/// <summary>
/// On a plate set out in round figures every distance is round, so it does not matter from where one was given; on any other
/// only the chosen one is. A taken distance pays for the choice among its datums; here it gets back what the other datums,
/// already tied to its own, would have given as well: the logarithm of their weighed sum over its own share.
/// </summary>
static class Lattice
{
    /// <summary>mm. Cause: distances between tied stations are exact to a ten-thousandth.</summary>
    const double Exact = 1e-3;

    public static double Bonus(Course course, ImmutableArray<Frame> frames, Origin origin, OriginPrior prior)
    {
        double bonus = 0;
        foreach (var frame in frames)
            foreach (var across in (bool[])[false, true]) bonus += Bonus(course, frame, across, origin, prior);
        return bonus;
    }

    static double Bonus(Course course, Frame frame, bool across, Origin origin, OriginPrior prior)
    {
        var taken = course.Taken.Where(t => t.Hypothesis is { Kind: PatternKind.RoundDistance, Ring: null } h && h.Across == across && h.Frame!.Name == frame.Name).Select(t => t.Hypothesis).ToList();
        if (taken.Count == 0) return 0;
        var stations = Station.Of(frame, across, course.Belief.X);
        int Of(int feature) => stations.FindIndex(s => s.Members.Contains(feature));
        var tied = Enumerable.Range(0, stations.Count).ToArray();
        double bonus = 0;
        foreach (var h in taken)
        {
            var (a, b) = (Of(h.Features[0]), Of(h.Features[1]));
            // The station that joins is the one tied to fewer others.
            if (tied.Count(t => t == tied[a]) < tied.Count(t => t == tied[b])) (a, b) = (b, a);
            var (datums, joining) = (tied[a], tied[b]);
            if (datums == joining) continue;
            var all = Enumerable.Range(0, stations.Count).Where(s => tied[s] == datums).Sum(s => Share(s, b));
            var own = Math.Exp(h.LogPrior + h.Parts[0].LogRange);
            bonus += Math.Log(Math.Max(own, all) / own);
            for (var s = 0; s < tied.Length; s++)
                if (tied[s] == joining) tied[s] = datums;
        }
        return bonus;

        double Share(int datum, int joining)
        {
            var length = Math.Abs(stations[joining].At - stations[datum].At);
            var choice = Distances.Choice(frame.Shape, Distances.Speaker(frame.Shape, stations[datum]), Distances.Speaker(frame.Shape, stations[joining]), Math.Abs(datum - joining), stations.Count);
            return Distances.Rungs(length, origin, prior).Where(r => Math.Abs(r.Nominal.Value - length) < Exact).Sum(r => Math.Exp(choice + r.LogStretch));
        }
    }
}
