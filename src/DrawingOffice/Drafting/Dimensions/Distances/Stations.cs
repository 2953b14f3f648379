using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Maths.Statistics;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions.Distances;

/// <summary>Sorts the places of a part along one axis into stations.</summary>
/// <param name="along">(1, 0) or (0, 1).</param>
sealed class Stations(FlatPart part, Vec2 along, Knowledge knowledge)
{
    /// <summary>Places closer than this along an axis share one dimension, mm: finer than a scriber line is wide.</summary>
    public const double Together = 0.1;

    /// <summary>mm; a 64th of an inch. Two places called the same size lie no farther apart, or one of the names is wrong.</summary>
    public const double SameName = 25.4 / 64;

    /// <summary>Chance that of all places along an axis that belong together any two are parted by the ± of their readings.</summary>
    public const double FalseParting = 0.05;

    readonly Place _datum = new(part.Origin, part.Datum?.Id ?? "datum", part.Datum?.Id, false);

    public List<Station> Of(IEnumerable<Hole> holes)
    {
        var found = part.Loops.SelectMany(OfLoop).Append(_datum).ToList();
        found.AddRange(Ends().Where(end => !found.Exists(f => Math.Abs(Way(f, end)) <= Together)).ToList());
        found.AddRange(holes.Select(h => new Place(h.Middle, h.Letter, h.Id, true)));
        // Bonferroni: of thirteen places at two standard deviations every other row would show one that is not there.
        var critical = Normal.OutsideQuantile(FalseParting / found.Count);
        return [.. Groups([.. found.OrderBy(s => s.Point.Dot(along))], critical).Select(Station)];
    }

    static IEnumerable<Place> OfLoop(ImmutableArray<Segment> loop)
    {
        foreach (var c in Outlines.Corners(loop)) yield return new(c.At, c.Id ?? "edge", c.Id, false);
        for (var i = 0; i < loop.Length; i++)
        {
            if (loop[i] is ArcSegment arc && !Outlines.IsFillet(loop[(i + loop.Length - 1) % loop.Length], arc, loop[(i + 1) % loop.Length]))
                yield return new(arc.Centre, "arc centre", null, false);
        }
    }

    // A round end has no corner where the part is longest; a whole round has its diameter.
    IEnumerable<Place> Ends()
    {
        if (part.Loops[0].Length == 1) yield break;
        var points = part.Loops[0].SelectMany(s => Outlines.Points(s)).ToList();
        var (low, high) = (points.MinBy(p => p.Dot(along)), points.MaxBy(p => p.Dot(along)));
        var box = part.Bounds;
        var (from, to) = along.X > 0 ? (box.Left, box.Right) : (box.Bottom, box.Top);
        foreach (var (point, end) in new[] { (low, from), (high, to) })
            yield return new(point + along * (end - point.Dot(along)), "edge", null, false);
    }

    double Way(Place from, Place to) => (to.Point - from.Point).Dot(along);

    Span Span(Place from, Place to) => new(from.Id, to.Id, along, Math.Abs(Way(from, to)));

    /// <summary>Each place joins the group before it when it is alike with every member.</summary>
    IEnumerable<ImmutableArray<Place>> Groups(List<Place> sorted, double critical)
    {
        var group = new List<Place>();
        foreach (var place in sorted)
        {
            if (!group.TrueForAll(g => Alike(g, place, critical)))
            {
                yield return [.. group];
                group = [];
            }
            group.Add(place);
        }
        yield return [.. group];
    }

    /// <summary>Made to the same size from the datum; or not made to different ones, and not so far apart that the survey could tell.</summary>
    /// <param name="critical">In standard uncertainties of their distance.</param>
    bool Alike(Place a, Place b, double critical)
    {
        var (apart, span) = (Math.Abs(Way(a, b)), Span(a, b));
        if (apart <= Together) return true;
        return (MadeTo(a), MadeTo(b)) switch
        {
            ({ } one, { } other) => one == other && apart <= SameName,
            _ => knowledge.Std(span) is { } std && apart <= critical * std,
        };
    }

    string? MadeTo(Place place) => knowledge.MadeTo(Span(_datum, place));

    // What has a name can be found again, so it goes before what has none.
    Station Station(ImmutableArray<Place> group)
    {
        var named = group.Where(s => s.Id is not null).DefaultIfEmpty(group[0]).ToList();
        var nearest = named.MinBy(s => s.Point.Dot(new(along.Y, along.X)))!;
        var known = named.MinBy(s => (knowledge.Std(Span(_datum, s)) ?? double.PositiveInfinity, s == nearest ? 0 : 1))!;
        return new(group, group.Contains(_datum) ? _datum : known, nearest);
    }
}
