using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Intent.Tables;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Offers;

/// <summary>Distances on the lists: along and across a frame, between stations.</summary>
static class Distances
{
    /// <summary>mm: nearer than this nothing is dimensioned.</summary>
    const double Shortest = 1.5;

    /// <summary>mm either side of the measured distance.</summary>
    const double Near = 0.7;

    /// <summary>Stations past which a distance between holes that are no neighbours is not weighed: the choice among so many costs more than it can earn.</summary>
    const int MostFar = 12;

    /// <summary>Listed values weighed for one distance, and the mm by which they are ranked beforehand: what hand making usually leaves between two holes.</summary>
    const int Rival = 3;

    const double Usual = 0.2;

    /// <param name="overAll">Only from edge to edge.</param>
    public static IEnumerable<Hypothesis> Listed(Frame frame, double[] x, Origin origin, OriginPrior prior, bool overAll)
    {
        foreach (var across in (bool[])[false, true])
        {
            var stations = Station.Of(frame, across, x);
            for (var i = 0; i < stations.Count; i++)
                for (var k = i + 1; k < stations.Count; k++)
                {
                    var (a, b) = (Speaker(frame.Shape, stations[i]), Speaker(frame.Shape, stations[k]));
                    if (overAll && !(frame.Shape.Edges.Contains(a) && frame.Shape.Edges.Contains(b))) continue;
                    if (stations.Count > MostFar && k > i + 1 && !frame.Shape.Edges.Contains(a) && !frame.Shape.Edges.Contains(b)) continue;
                    var choice = Choice(frame.Shape, a, b, k - i, stations.Count);
                    foreach (var (nominal, log) in Nearest(stations[k].At - stations[i].At, origin, prior))
                        yield return new(PatternKind.RoundDistance, [a, b], [frame.Sum(across, nominal.Value, log, (b, 1), (a, -1))], choice)
                        {
                            About = Rows.About(frame, !across),
                            Nominal = nominal,
                            Across = across,
                            Frame = frame,
                        };
                }
        }
    }

    static IEnumerable<(Nominal Nominal, double LogStretch)> Nearest(double length, Origin origin, OriginPrior prior) =>
        Rungs(length, origin, prior).OrderByDescending(r => r.LogStretch - Math.Pow((r.Nominal.Value - length) / Usual, 2) / 2).Take(Rival);

    /// <summary>Listed lengths near one, with the logarithm of the stretch that each holds.</summary>
    public static IEnumerable<(Nominal Nominal, double LogStretch)> Rungs(double length, Origin origin, OriginPrior prior)
    {
        if (length < Shortest) yield break;
        var series = Catalogue.SeriesOf(Subject.Length);
        foreach (var c in Catalogue.Between(Subject.Length, Facet.Size, length - Near, length + Near))
        {
            var stretch = c.Mass * c.Size * prior.Weight(origin, c.Series, series);
            if (stretch > 0) yield return (new(c.Size, c.Name, c.Series), Math.Log(stretch));
        }
    }

    /// <summary>An edge speaks for its station, as a dimension is taken from it; else the first feature.</summary>
    public static int Speaker(Shape shape, Station station) =>
        station.Members.Where(shape.Edges.Contains).Select(f => (int?)f).FirstOrDefault() ?? station.First;

    /// <summary>
    /// Which distance the draughtsman gave: over all; from one of the edges; to a neighbour; seldom to a far hole (shares are common
    /// practice). The choice is paid for, or the roundest of many distances would always look meant.
    /// </summary>
    public static double Choice(Shape shape, int a, int b, int steps, int among) => (shape.Edges.Contains(a), shape.Edges.Contains(b)) switch
    {
        (true, true) => 0,
        (false, false) when steps == 1 => -Math.Log(5),
        (false, false) => -Math.Log(2 * among),
        _ => -Math.Log(4),
    };
}
