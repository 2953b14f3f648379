using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey;

/// <summary>Shapes in which a distance has no first-order say: sketches heaped on one place, circles that touch.</summary>
[Truth(Grade.Property, "the least sum of squares does not depend on where the search starts; a fit is no worse than one that can be written down")]
public class DegenerateTests
{
    static readonly Dictionary<string, Vec2> Places = new() { ["A"] = new(0, 0), ["B"] = new(80, 0), ["C"] = new(82, 55), ["D"] = new(-3, 50) };

    [Theory, InlineData(0, 0), InlineData(10, 0), InlineData(0, 1)]
    public void A_sketch_heaped_on_one_place_or_line_spoils_nothing(double stepX, double stepY)
    {
        var sample = Simulated.Plate(9, 4, new Chance(3));
        var heaped = sample with { Features = [.. sample.Features.Select((f, i) => f with { Sketch = new Vec2(5 + stepX * i, 7 + stepY * i) })] };
        Assert.Equal(Adjust.Solve(sample).WeightedSumOfSquares, Adjust.Solve(heaped).WeightedSumOfSquares, 1e-6);
    }

    [Fact]
    public void A_hole_whose_two_circles_just_miss_lies_on_the_line_and_may_still_move_across_it()
    {
        (string From, string To, double Value)[] distances = [.. new[] { ("A", "B"), ("B", "C"), ("C", "D"), ("D", "A"), ("A", "C"), ("B", "D") }
            .Select(t => (t.Item1, t.Item2, Places[t.Item1].DistanceTo(Places[t.Item2]))), ("A", "H", 30), ("B", "H", 49.9)];
        var sample = new Sample("miss", "", [.. Places.Keys.Append("H").Select(id => new Feature(id, FeatureKind.Point))],
            [.. distances.Select((d, i) => new Reading(i, ReadingKind.CentreDistance, d.From, d.To, d.Value, 0.02))]);
        var plan = Adjust.Solve(sample);
        // With the others as they are and H on the line, the two distances take half of the 0.1 mm each: 2 (0.05/0.02)².
        Assert.InRange(plan.WeightedSumOfSquares, 0, 12.5);
        var at = plan.Features.ToDictionary(f => f.Id, f => f.At);
        Assert.Equal(0, (at["B"] - at["A"]).Unit.Cross(at["H"] - at["A"]), 1e-3);
        Assert.Equal(["H"], Assert.Single(plan.Loose).Ids);
    }

    [Fact]
    public void Conditions_that_cannot_all_hold_end_in_words_and_not_in_a_fault()
    {
        (ReadingKind Kind, string From, string? To, double Value, double Sigma)[] readings =
        [
            (ReadingKind.Radius, "A1", null, 5, 0.2), (ReadingKind.Chord, "A2", null, 5, 0.2), (ReadingKind.Rise, "A2", null, 50_000, 0.2), (ReadingKind.SlotWidth, "S1", null, 5, 0.2),
            (ReadingKind.Parallel, "E1", "E2", 0, 0), (ReadingKind.Tangent, "E1", "A1", 0, 0), (ReadingKind.On, "C1", "A1", 0, 0), (ReadingKind.AngleBetweenEdges, "E1", "S1", 0.8, 0.01),
            (ReadingKind.Picked, "S1", null, 5, 0.1), (ReadingKind.AcrossEdges, "E1", "E2", 5, 0.2),
        ];
        var sample = new Sample("no", "",
        [
            new("C1", FeatureKind.Point), new("C2", FeatureKind.Point), new("E1", FeatureKind.Edge) { From = "C1", To = "C2" }, new("E2", FeatureKind.Edge),
            new("A1", FeatureKind.Arc), new("A2", FeatureKind.Arc) { From = "C1", To = "C2" }, new("S1", FeatureKind.Slot),
        ], [.. readings.Select((r, i) => new Reading(i, r.Kind, r.From, r.To, r.Value, r.Sigma))]);
        var plan = Adjust.Solve(sample);
        Assert.False(plan.Convergence.Converged && plan.Global.Passes);
        Assert.NotEmpty(plan.Convergence.Words);
    }
}
