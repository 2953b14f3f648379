using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions.Distances;

/// <summary>A place along one axis that somebody has to find on the metal.</summary>
/// <param name="Point">The feature nearest the dimensions, mm on the part; the dimension is taken to it.</param>
/// <param name="Name">What lies there, for the table.</param>
/// <param name="Id">The feature's id, when it has one.</param>
sealed record Station(Vec2 Point, string Name, string? Id, bool IsHole);

static class Stations
{
    /// <summary>Features closer than this along an axis share one dimension, mm: finer than a scriber line is wide.</summary>
    public const double Together = 0.1;

    /// <param name="along">(1, 0) or (0, 1).</param>
    public static List<Station> Of(FlatPart part, Vec2 along, bool withHoles, IReadOnlyList<Hole> holes)
    {
        var found = part.Loops.SelectMany(OfLoop).ToList();
        found.Add(new(part.Origin, part.Datum?.Id ?? "datum", part.Datum?.Id, false));
        AddEnds(found, part, along);
        if (withHoles) found.AddRange(holes.Select(h => new Station(h.Middle, h.Letter, h.Id, true)));
        return Merge(found, along);
    }

    static IEnumerable<Station> OfLoop(ImmutableArray<Segment> loop)
    {
        foreach (var c in Outlines.Corners(loop)) yield return new(c.At, c.Id ?? "edge", c.Id, false);
        for (var i = 0; i < loop.Length; i++)
        {
            if (loop[i] is ArcSegment arc && !Outlines.IsFillet(loop[(i + loop.Length - 1) % loop.Length], arc, loop[(i + 1) % loop.Length]))
                yield return new(arc.Centre, "arc centre", null, false);
        }
    }

    // A round end has no corner where the part is longest; a whole round has its diameter.
    static void AddEnds(List<Station> found, FlatPart part, Vec2 along)
    {
        if (part.Loops[0].Length == 1) return;
        var points = part.Loops[0].SelectMany(s => Outlines.Points(s)).ToList();
        if (points.Count == 0) return;
        var (low, high) = (points.MinBy(p => p.Dot(along)), points.MaxBy(p => p.Dot(along)));
        var box = part.Bounds;
        var (from, to) = along.X > 0 ? (box.Left, box.Right) : (box.Bottom, box.Top);
        foreach (var (point, end) in new[] { (low, from), (high, to) })
            found.Add(new(point + along * (end - point.Dot(along)), "edge", null, false));
    }

    static List<Station> Merge(List<Station> found, Vec2 along)
    {
        var merged = new List<Station>();
        // A stable order; named features first, so that a dimension is taken to what can be found again.
        foreach (var group in Clusters([.. found.OrderBy(s => s.Point.Dot(along))], along))
        {
            var named = group.Where(s => s.Id is not null).DefaultIfEmpty(group[0]);
            var nearest = named.MinBy(s => s.Point.Dot(Across(along)))!;
            merged.Add(nearest with { Name = NameOf(group), IsHole = nearest.IsHole });
        }
        return merged;
    }

    // Holes by their letters; else corners by their ids; else what it is.
    static string NameOf(List<Station> group)
    {
        var telling = group.Where(s => s.IsHole).Select(s => s.Name).ToList();
        if (telling.Count == 0) telling = [.. group.Where(s => s.Id is not null).Select(s => s.Name)];
        if (telling.Count == 0) telling = [group.Select(s => s.Name).MinBy(n => n == "edge")!];
        var names = telling.Distinct().ToList();
        return names.Count <= 3 ? string.Join(", ", names) : string.Join(", ", names.Take(3)) + " …";
    }

    static Vec2 Across(Vec2 along) => new(along.Y, along.X);

    static IEnumerable<List<Station>> Clusters(List<Station> sorted, Vec2 along)
    {
        var group = new List<Station>();
        foreach (var s in sorted)
        {
            if (group.Count > 0 && (s.Point - group[0].Point).Dot(along) > Together)
            {
                yield return group;
                group = [];
            }
            group.Add(s);
        }
        if (group.Count > 0) yield return group;
    }
}
