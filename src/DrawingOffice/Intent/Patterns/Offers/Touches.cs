using WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Offers;

/// <summary>Edges tangent to arcs, and rounds about one centre.</summary>
static class Touches
{
    /// <summary>mm.</summary>
    const double Near = 1.2;

    public static IEnumerable<Hypothesis> Of(Shape shape, double[] x) => Tangents(shape, x).Concat(Concentrics(shape, x));

    static IEnumerable<Hypothesis> Tangents(Shape shape, double[] x)
    {
        var arcs = shape.Sized.Where(f => shape.Kind(f) == FeatureKind.Arc).ToList();
        foreach (var arc in arcs)
            foreach (var edge in shape.Edges)
            {
                var tangent = Tangent(shape, edge, arc, x);
                if (Math.Abs(tangent.Of(x)) > Near) continue;
                // An edge that runs into the arc was almost always meant to run into it smoothly.
                var meets = shape.CornersOf(arc).Intersect(shape.CornersOf(edge)).Any();
                yield return new(PatternKind.Tangent, [edge, arc], [tangent], meets ? 0 : -Math.Log(Math.Max(2, shape.Edges.Length * arcs.Count)));
            }
    }

    /// <summary>The edge's line lies the radius from the centre, on the side where it lies now.</summary>
    public static Tie Tangent(Shape shape, int edge, int arc, double[] at)
    {
        double Off(double[] x) => (shape.At(arc, x) - shape.At(edge, x)).Dot(Maths.Vec2.Polar(shape.Turn(edge, x)).Left);
        var side = Math.Sign(Off(at));
        return new([edge, arc], Math.Log(shape.Extent / 2), x => side * Off(x) - shape.Radius(arc, x));
    }

    static IEnumerable<Hypothesis> Concentrics(Shape shape, double[] x)
    {
        var rounds = shape.Sized.Where(f => shape.Kind(f) is FeatureKind.Arc or FeatureKind.Hole).ToList();
        for (var i = 0; i < rounds.Count; i++)
            for (var k = i + 1; k < rounds.Count; k++)
                if (shape.At(rounds[i], x).DistanceTo(shape.At(rounds[k], x)) < Near)
                    yield return new(PatternKind.Concentric, [rounds[i], rounds[k]], [.. Concentric(shape, rounds[i], rounds[k])], -Math.Log(rounds.Count));
    }

    /// <summary>Two conditions, in the plan's own x and y: both are 0, so the turn of the plan does not matter.</summary>
    public static IEnumerable<Tie> Concentric(Shape shape, int a, int b)
    {
        var range = Math.Log(shape.Extent / 2);
        yield return new([a, b], range, x => shape.At(a, x).X - shape.At(b, x).X);
        yield return new([a, b], range, x => shape.At(a, x).Y - shape.At(b, x).Y);
    }
}
