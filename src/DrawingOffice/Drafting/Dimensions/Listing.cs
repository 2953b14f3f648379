using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Drafting.Dimensions.Distances;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Drafting.Dimensions;

/// <summary>Numbers each dimension as it is drawn and keeps its table row.</summary>
sealed class Listing(Knowledge knowledge, Writing writing)
{
    readonly ImmutableArray<DimensionItem>.Builder _items = ImmutableArray.CreateBuilder<DimensionItem>();

    public ImmutableArray<DimensionItem> Items => _items.ToImmutable();

    int Next => _items.Count + 1;

    public Label Linear(Asked asked, Vec2 along)
    {
        var (a, b) = (asked.A, asked.B);
        var value = Math.Abs((b.Point - a.Point).Dot(along));
        // The datum's own partners are within their ± of it; those at the other end share the dimension, and the one known worst speaks for its ±.
        List<Span> spans = [.. b.Members.OrderBy(m => m == b.Main ? 0 : 1).Select(m => new Span(a.Main.Id, m.Id, along, Math.Abs((m.Point - a.Point).Dot(along))))];
        var (std, made, wanted) = (spans.Max(knowledge.Std), spans.Select(knowledge.MadeTo).FirstOrDefault(m => m is not null), spans.Min(knowledge.Wanted));
        var figure = made ?? writing.Length(value, std);
        var text = asked.Auxiliary ? $"({figure})" : figure;
        var axis = along.X > 0 ? "across" : "up";
        var what = asked.OverAll ? $"{axis}, over all" : $"{axis}, {a.Name} to {b.Name}";
        var kind = along.X > 0 ? DimensionKind.Across : DimensionKind.Up;
        return Take(new(Next, kind, what, text, value, std, made, wanted, asked.Auxiliary, a.Point, b.Point));
    }

    /// <param name="outwards">From the centre to the arc, mm.</param>
    public Label Arc(ArcSegment arc, Vec2 outwards, int count, bool whole)
    {
        var (sign, value, what) = whole ? ("⌀", arc.Known?.Value ?? 2 * arc.Radius, "outline") : ("R", arc.Known?.Value ?? arc.Radius, "radius");
        var times = count > 1 ? $"{count}× " : "";
        var places = count > 1 ? $"{what}, {count} places" : what;
        var kind = whole ? DimensionKind.Diameter : DimensionKind.Radius;
        var known = arc.Known;
        var figure = known?.MadeTo ?? writing.Length(value, known?.Std);
        var from = whole ? arc.Centre - outwards : arc.Centre;
        return Take(new(Next, kind, places, $"{times}{sign}{figure}", value, known?.Std, known?.MadeTo, known?.Wanted, false, from, arc.Centre + outwards));
    }

    public Label Angle(Outlines.Corner corner, double angle)
    {
        // Corners are given by their places, so the angle follows.
        var text = $"({Writing.Angle(angle)})";
        return Take(new(Next, DimensionKind.Angle, $"angle at {corner.Id ?? "corner"}", text, angle, null, null, null, true, corner.At, corner.At));
    }

    Label Take(DimensionItem item)
    {
        _items.Add(item);
        return new(item.Text, item.Number);
    }
}
