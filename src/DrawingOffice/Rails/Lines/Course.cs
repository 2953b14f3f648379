using System.Collections.Immutable;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Rails;

/// <summary>A straight or an arc, mm and radians.</summary>
/// <param name="Curvature">1/mm, positive turning left; 0 straight.</param>
public readonly record struct Step(Vec2 From, double Heading, double Length, double Curvature)
{
    public Vec2 To => At(Length);

    public double EndHeading => Heading + Curvature * Length;

    public Vec2 At(double along)
    {
        // A chord turns by half the arc; sin x / x keeps its digits on flat arcs.
        var half = Curvature * along / 2;
        return From + Vec2.Polar(Heading + half, along * (Math.Abs(half) < 1e-8 ? 1 : Math.Sin(half) / half));
    }

    public Vec2 AlongAt(double along) => Vec2.Polar(Heading + Curvature * along);
}

/// <summary>Straights and arcs end to end. Headings may jump from one to the next: a corner.</summary>
public sealed class Course
{
    readonly double[] _starts;

    public Course(ImmutableArray<Step> steps)
    {
        Steps = steps;
        _starts = new double[steps.Length + 1];
        for (var i = 0; i < steps.Length; i++) _starts[i + 1] = _starts[i] + steps[i].Length;
    }

    public ImmutableArray<Step> Steps { get; }

    /// <summary>mm.</summary>
    public double Length => _starts[^1];

    /// <summary>Where step i begins, mm along.</summary>
    public double StartOf(int i) => _starts[i];

    /// <summary>The step that holds a place, the later one where two meet; beyond the ends the end steps go on.</summary>
    public int StepAt(double along)
    {
        var i = 0;
        while (i < Steps.Length - 1 && along >= _starts[i + 1]) i++;
        return i;
    }

    public Vec2 At(double along) => StepAt(along) is var i ? Steps[i].At(along - _starts[i]) : default;
}
