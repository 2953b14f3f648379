using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.Web.Client.DrawingOffice.SquaredPaper;

/// <summary>Fingers and mouse that are down on a paper, each at its place on the screen, px.</summary>
public sealed record Pointers(ImmutableDictionary<long, Vec2> Down)
{
    public static Pointers None { get; } = new(ImmutableDictionary<long, Vec2>.Empty);

    public int Count => Down.Count;

    public Pointers With(long id, Vec2 at) => new(Down.SetItem(id, at));

    public Pointers Without(long id) => new(Down.Remove(id));

    /// <summary>One of them went on to another place; null when it is not down.</summary>
    public (Pointers Next, Stroke Stroke)? Along(long id, Vec2 to) =>
        !Down.TryGetValue(id, out var from) ? null
        : (With(id, to), new(from, to, Count == 2 ? Down.First(p => p.Key != id).Value : null));
}

/// <summary>A step of one pointer, px; y down.</summary>
/// <param name="Still">Where the other of two fingers rests; null when the pointer is alone or one of many.</param>
public readonly record struct Stroke(Vec2 From, Vec2 To, Vec2? Still)
{
    public double Length => From.DistanceTo(To);

    /// <summary>A pointer alone carries the paper along; of two fingers the one at rest keeps its place, and the other its distance from it.</summary>
    /// <param name="perPixel">Units of the paper in a pixel.</param>
    /// <param name="place">Where on the paper a place of the screen lies.</param>
    public View Seen(View view, double perPixel, Func<Vec2, Vec2> place) => Still is not { } still
        ? view.Moved(new Vec2(From.X - To.X, To.Y - From.Y) * perPixel)
        : still.DistanceTo(To) > 1 ? view.Zoomed(still.DistanceTo(From) / still.DistanceTo(To), place(still)) : view;
}
