using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions.Distances;

enum Manner
{
    /// <summary>One after another; for two or three, since their errors add up along the chain.</summary>
    Chain,

    /// <summary>Each from the datum on a line of its own (parallel dimensioning, ISO 129-1).</summary>
    Baseline,

    /// <summary>All from the datum on one line (running dimensioning, ISO 129-1), where lines of their own would fill the sheet.</summary>
    Running,

    /// <summary>Too many for figures: over all only, and a note that says so.</summary>
    OverAll,
}

/// <summary>The rule by which dimensions along one axis are chosen.</summary>
static class Choice
{
    public const int LongestChain = 3, MostBaseline = 6, MostRunningWithHoles = 14, MostRunning = 40;

    /// <summary>
    /// Chain for up to three when the part names no datum; from the datum for more or when it does: up to six on lines of their own, else on one running line.
    /// Past fourteen the holes are left to the hole table; past forty even the corners go undimensioned, with a note.
    /// </summary>
    public static (Manner Manner, List<Station> Stations, bool WithHoles) Of(FlatPart part, Vec2 along, IReadOnlyList<Hole> holes)
    {
        var stations = Stations.Of(part, along, true, holes);
        var withHoles = stations.Count - 1 <= MostRunningWithHoles;
        if (!withHoles) stations = Stations.Of(part, along, false, holes);
        var manner = (stations.Count - 1) switch
        {
            <= LongestChain when part.Datum is null => Manner.Chain,
            <= MostBaseline => Manner.Baseline,
            <= MostRunning => Manner.Running,
            _ => Manner.OverAll,
        };
        return (manner, stations, withHoles);
    }

    /// <summary>The dimensions in the order they are set out, nearest the view first.</summary>
    /// <param name="stations">In order along the axis, at least one.</param>
    public static List<Asked> Dimensions(Manner manner, List<Station> stations, Vec2 datum, Vec2 along)
    {
        if (stations.Count < 2) return [];
        // Between two holes at the ends it is not over all: a round part then has its diameter.
        var ends = !stations[0].IsHole && !stations[^1].IsHole;
        var overAll = new Asked(stations[0], stations[^1], false, true);
        switch (manner)
        {
            case Manner.OverAll:
                return [overAll];
            case Manner.Chain:
                // With the whole given, the last link follows from the others.
                var links = stations.Zip(stations.Skip(1)).Select((p, i) => new Asked(p.First, p.Second, ends && i == stations.Count - 2, false));
                return !ends ? [.. links] : stations.Count == 2 ? [overAll] : [.. links, overAll];
            default:
                var from = stations.MinBy(s => Math.Abs((s.Point - datum).Dot(along)))!;
                var fromDatum = stations.Where(s => s != from).OrderBy(s => Math.Abs((s.Point - from.Point).Dot(along)));
                var all = fromDatum.Select(s => new Asked(from, s, false, ends && from == stations[0] && s == stations[^1]));
                return !ends || from == stations[0] || from == stations[^1] ? [.. all] : [.. all, overAll with { Auxiliary = true }];
        }
    }
}
