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

/// <summary>How the places along one axis are dimensioned.</summary>
/// <param name="Stations">In order along the axis, at least one.</param>
/// <param name="WithHoles">The holes are among them.</param>
sealed record Choice(Manner Manner, List<Station> Stations, bool WithHoles)
{
    public const int LongestChain = 3, MostBaseline = 6, MostRunningWithHoles = 14, MostRunning = 40;

    /// <summary>
    /// Chain for up to three when the part names no datum; from the datum for more or when it does: up to six on lines of their own, else on one running line.
    /// Past fourteen the holes are left to the hole table; past forty even the corners go undimensioned, with a note.
    /// </summary>
    public static Choice Of(FlatPart part, Vec2 along, IReadOnlyList<Hole> holes, Knowledge knowledge)
    {
        var places = new Stations(part, along, knowledge);
        var stations = places.Of(holes);
        var withHoles = stations.Count - 1 <= MostRunningWithHoles;
        if (!withHoles) stations = places.Of([]);
        var manner = (stations.Count - 1) switch
        {
            <= LongestChain when part.Datum is null => Manner.Chain,
            <= MostBaseline => Manner.Baseline,
            <= MostRunning => Manner.Running,
            _ => Manner.OverAll,
        };
        return new(manner, stations, withHoles);
    }

    /// <summary>In the style of the other axis when that has more to show: one view, one style. A lone dimension has none.</summary>
    public Choice InStyleOf(Choice other) =>
        Stations.Count > 2 && other.Stations.Count > 2 && other.Manner != Manner.OverAll && other.Manner > Manner ? this with { Manner = other.Manner } : this;

    /// <summary>Letters of the holes whose place along the axis a dimension gives; on the datum itself there is none.</summary>
    public IEnumerable<string> Given(Vec2 datum, Vec2 along)
    {
        var from = From(datum, along);
        return Stations.Where(s => WithHoles && s != from).SelectMany(s => s.Members).Where(m => m.IsHole).Select(m => m.Name);
    }

    Station From(Vec2 datum, Vec2 along) => Stations.MinBy(s => Math.Abs((s.Point - datum).Dot(along)))!;

    /// <summary>The dimensions in the order they are set out, nearest the view first.</summary>
    public List<Asked> Dimensions(Vec2 datum, Vec2 along)
    {
        if (Stations is not [var first, .., var last]) return [];
        // Between two holes at the ends it is not over all: a round part then has its diameter.
        var ends = !first.Main.IsHole && !last.Main.IsHole;
        var overAll = new Asked(first, last, false, true);
        switch (Manner)
        {
            case Manner.OverAll:
                return [overAll];
            case Manner.Chain:
                // With the whole given, the last link follows from the others.
                var links = Stations.Zip(Stations.Skip(1)).Select((p, i) => new Asked(p.First, p.Second, ends && i == Stations.Count - 2, false));
                return !ends ? [.. links] : Stations.Count == 2 ? [overAll] : [.. links, overAll];
            default:
                var from = From(datum, along);
                var fromDatum = Stations.Where(s => s != from).OrderBy(s => Math.Abs((s.Point - from.Point).Dot(along)));
                var all = fromDatum.Select(s => new Asked(from, s, false, ends && from == first && s == last));
                return !ends || from == first || from == last ? [.. all] : [.. all, overAll with { Auxiliary = true }];
        }
    }
}
