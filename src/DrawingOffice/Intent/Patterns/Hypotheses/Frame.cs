using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Intent.Patterns.Hypotheses;

/// <summary>A direction that things are set out along and across: that of an edge or slot, or of the line through two places.</summary>
/// <param name="B">−1 where A has a direction itself.</param>
/// <param name="Along">Edges that run along it.</param>
/// <param name="Across">Edges square to it.</param>
sealed record Frame(Shape Shape, int A, int B, ImmutableArray<int> Along, ImmutableArray<int> Across)
{
    public string Name => B < 0 ? Shape.Id(A) : $"{Shape.Id(A)}-{Shape.Id(B)}";

    public ImmutableArray<int> Base => B < 0 ? [A] : [A, B];

    public Vec2 Direction(double[] x) => B < 0 ? Vec2.Polar(Shape.Turn(A, x)) : (Shape.At(B, x) - Shape.At(A, x)).Unit;

    /// <summary>Where a feature stands along the frame, or across it, mm.</summary>
    public double Station(int feature, bool across, double[] x)
    {
        var along = Direction(x);
        return (across ? along.Left : along).Dot(Shape.At(feature, x));
    }

    /// <summary>Places, and the edges that stand square to the way counted.</summary>
    public IEnumerable<int> Standing(bool across) => Shape.Places.Concat(across ? Along : Across);

    /// <summary>Σ weight · station = value.</summary>
    public Tie Sum(bool across, double value, double logRange, params (int Feature, double Weight)[] terms) =>
        new([.. terms.Select(t => t.Feature), .. Base], logRange, x =>
        {
            var along = Direction(x);
            var way = across ? along.Left : along;
            double sum = 0;
            foreach (var (feature, weight) in terms) sum += weight * way.Dot(Shape.At(feature, x));
            return sum - value;
        });
}
