using System.Collections.Immutable;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.PlanningOffice;

/// <summary>Standard deviations of the logarithm: between kinds of work, between systems, and of a single job.</summary>
/// <param name="Prior">Prior mass of this grid point; the whole grid sums to 1.</param>
readonly record struct Scales(double Kind, double System, double Job, double Prior)
{
    /// <summary>Spread of the half-normal priors of the scales (common practice).</summary>
    public const double BetweenGroups = 0.4, BetweenJobs = 0.6;

    /// <summary>
    /// 0.03 to 1.2 between groups, 0.08 to 2 between jobs, evenly spaced in the logarithm. Each point stands for the scales
    /// nearer to it than to its neighbours, the outermost for all beyond them.
    /// </summary>
    public static ImmutableArray<Scales> Grid { get; } =
    [
        .. from k in Ladder(0.03, 1.2, 8, BetweenGroups)
           from s in Ladder(0.03, 1.2, 8, BetweenGroups)
           from j in Ladder(0.08, 2, 22, BetweenJobs)
           select new Scales(k.Scale, s.Scale, j.Scale, k.Mass * s.Mass * j.Mass),
    ];

    static IEnumerable<(double Scale, double Mass)> Ladder(double low, double high, int rungs, double spread)
    {
        var step = Math.Pow(high / low, 1 / (rungs - 1.0));
        for (var i = 0; i < rungs; i++)
        {
            var scale = low * Math.Pow(step, i);
            // P(|Z| > z) of either edge.
            var from = i == 0 ? 1 : Normal.Outside(scale / Math.Sqrt(step) / spread);
            var to = i == rungs - 1 ? 0 : Normal.Outside(scale * Math.Sqrt(step) / spread);
            yield return (scale, from - to);
        }
    }
}
