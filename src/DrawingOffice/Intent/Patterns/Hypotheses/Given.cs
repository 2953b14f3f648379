using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;

/// <summary>What the sketch and the person's own conditions say already: it holds from the start and earns no odds.</summary>
static class Given
{
    public static ImmutableArray<Tie> Of(Shape shape, Sample sample) => [.. Ends(shape).Concat(Said(shape, sample))];

    static IEnumerable<Tie> Ends(Shape shape) =>
        from arc in shape.Known
        where shape.Kind(arc) == FeatureKind.Arc && shape.HasSize(arc)
        from corner in shape.CornersOf(arc)
        select Round(shape, corner, arc);

    static IEnumerable<Tie> Said(Shape shape, Sample sample)
    {
        foreach (var r in sample.Readings.Where(r => r.Exact))
        {
            if (shape.Find(r.From) is not { } a || r.To is null || shape.Find(r.To) is not { } b) continue;
            var edges = (shape.Kind(a) == FeatureKind.Edge, shape.Kind(b) == FeatureKind.Edge);
            Tie? condition = (r.Kind, edges) switch
            {
                (ReadingKind.Parallel, _) => Offers.Directions.Apart(shape, a, b, 0, 0),
                (ReadingKind.Square, _) => Offers.Directions.Apart(shape, a, b, Math.PI / 2, 0),
                (ReadingKind.On, (_, true)) => Off(shape, a, b),
                (ReadingKind.On, _) when shape.HasSize(b) => Round(shape, a, b),
                (ReadingKind.Tangent, (true, false)) when shape.HasSize(b) => Offers.Touches.Tangent(shape, a, b, shape.Start),
                (ReadingKind.Tangent, (false, true)) when shape.HasSize(a) => Offers.Touches.Tangent(shape, b, a, shape.Start),
                _ => null,
            };
            if (condition is not null) yield return condition;
        }
    }

    static Tie Round(Shape shape, int place, int round) =>
        new([place, round], 0, x => shape.At(place, x).DistanceTo(shape.At(round, x)) - shape.Radius(round, x));

    static Tie Off(Shape shape, int place, int edge) =>
        new([place, edge], 0, x => (shape.At(place, x) - shape.At(edge, x)).Dot(Maths.Vec2.Polar(shape.Turn(edge, x)).Left));
}
