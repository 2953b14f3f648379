using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey;

/// <summary>Slots, arcs, free edges, picks and conditions on shapes whose truth follows from school geometry.</summary>
[Truth(Grade.Property, "exact geometry")]
public class ShapeTests
{
    static Feature Corner(string id, double x, double y) => new(id, FeatureKind.Point) { Sketch = new Vec2(x, y) };

    static ImmutableArray<Reading> Readings(params (ReadingKind Kind, string From, string? To, double Value, double Sigma)[] list) =>
        [.. list.Select((r, i) => new Reading(i, r.Kind, r.From, r.To, r.Value, r.Sigma))];

    [Fact]
    public void An_arc_follows_from_chord_and_rise()
    {
        var sample = new Sample("arc", "", [Corner("A", 0, 0), Corner("B", 60, 1), new("R", FeatureKind.Arc) { From = "A", To = "B" }],
            Readings((ReadingKind.Chord, "R", null, 60, 0.02), (ReadingKind.Rise, "R", null, 10, 0.02)));
        var plan = Adjust.Solve(sample);
        // r = (c²/4 + h²)/(2h)
        Assert.Equal((900 + 100) / 20.0, plan.Of("R").Size!.Value.Value, 1e-6);
        Assert.Equal(0, plan.LooseFreedoms);
        // dr/dc = c/(4h) = 1.5, dr/dh = 1/2 − c²/(8h²) = −4.
        Assert.Equal(0.02 * Math.Sqrt(1.5 * 1.5 + 4 * 4), plan.Of("R").Size!.Value.Std, 1e-6);
    }

    [Fact]
    public void An_exact_square_condition_makes_the_third_side_follow_from_two()
    {
        var sample = new Sample("square", "", [Corner("A", 0, 0), Corner("B", 41, 1), Corner("C", 39, 31), new("E", FeatureKind.Edge) { From = "A", To = "B" }, new("F", FeatureKind.Edge) { From = "B", To = "C" }],
            Readings((ReadingKind.CentreDistance, "A", "B", 40, 0.03), (ReadingKind.CentreDistance, "B", "C", 30, 0.04), (ReadingKind.Square, "E", "F", 0, 0)));
        var plan = Adjust.Solve(sample);
        var side = plan.Distance("A", "C")!.Value;
        Assert.Equal(50, side.Value, 1e-7);
        Assert.Equal(Math.Sqrt(0.8 * 0.8 * 0.03 * 0.03 + 0.6 * 0.6 * 0.04 * 0.04), side.Std, 1e-7);
    }

    [Fact]
    public void A_hole_between_two_free_parallel_edges_is_placed_across_them()
    {
        var sample = new Sample("strip", "",
            [new("H", FeatureKind.Hole) { Sketch = new(20, 9) }, new("K", FeatureKind.Hole) { Sketch = new(70, 11) }, new("L", FeatureKind.Edge) { Sketch = new(0, 0) }, new("U", FeatureKind.Edge) { Sketch = new(0, 20) }],
            Readings((ReadingKind.Diameter, "H", null, 8, 0.02), (ReadingKind.Diameter, "K", null, 8, 0.02), (ReadingKind.EdgeToHole, "H", "L", 6, 0.02), (ReadingKind.EdgeToHole, "K", "L", 6, 0.02),
                (ReadingKind.AcrossEdges, "L", "U", 25, 0.02), (ReadingKind.Parallel, "L", "U", 0, 0), (ReadingKind.OutsideOverHoles, "H", "K", 58, 0.02)));
        var plan = Adjust.Solve(sample);
        Assert.Equal(0, plan.LooseFreedoms);
        Assert.Equal(11, plan.Quantity(ReadingKind.EdgeToHole, "H", "U")!.Value.Value, 1e-6);
        Assert.Equal(50, plan.Distance("H", "K")!.Value.Value, 1e-6);
    }

    [Fact]
    public void Picks_off_two_papers_tie_into_one_plan_whatever_way_each_paper_lay()
    {
        Vec2[] truth = [new(0, 0), new(100, 0), new(90, 60), new(10, 55)];
        var readings = new List<Reading>();
        foreach (var (frame, turn, shift) in new[] { ("one", 0.4, new Vec2(12, 80)), ("two", -2.2, new Vec2(-30, 5)) })
            for (var i = 0; i < 4; i++)
            {
                var p = truth[i].Turned(turn) + shift;
                readings.Add(new Reading(readings.Count, ReadingKind.Picked, $"P{i}", null, p.X, 0.3) { ValueY = p.Y, Frame = frame });
            }
        var plan = Adjust.Solve(new Sample("picks", "", [.. truth.Select((_, i) => new Feature($"P{i}", FeatureKind.Point))], [.. readings]));
        Assert.Equal(3, plan.DatumFreedoms);
        Assert.Equal(16 - (8 + 6 - 3), plan.Redundancy);
        Assert.Equal(truth[0].DistanceTo(truth[2]), plan.Distance("P0", "P2")!.Value.Value, 1e-7);
        Assert.Equal(truth[1].DistanceTo(truth[3]), plan.Distance("P1", "P3")!.Value.Value, 1e-7);
    }

    [Fact]
    public void A_slot_is_found_from_its_length_width_and_distance_to_edges()
    {
        var sample = new Sample("slot", "",
            [Corner("A", 0, 0), Corner("B", 79, 1), Corner("C", 81, 41), Corner("D", -1, 39), new("E", FeatureKind.Edge) { From = "A", To = "B" }, new("F", FeatureKind.Edge) { From = "D", To = "A" },
                new("S", FeatureKind.Slot) { Sketch = new(33, 18), SketchTurn = 0.1 }],
            Readings((ReadingKind.LengthAlongEdge, "E", null, 80, 0.02), (ReadingKind.LengthAlongEdge, "F", null, 40, 0.02), (ReadingKind.CentreDistance, "B", "C", 40, 0.02), (ReadingKind.CentreDistance, "C", "D", 80, 0.02),
                (ReadingKind.Square, "E", "F", 0, 0), (ReadingKind.SlotLength, "S", null, 26, 0.02), (ReadingKind.SlotWidth, "S", null, 8, 0.02),
                (ReadingKind.CentreToEdge, "S", "E", 20, 0.02), (ReadingKind.CentreToEdge, "S", "F", 35, 0.02), (ReadingKind.Parallel, "S", "E", 0, 0.002)));
        var plan = Adjust.Solve(sample);
        Assert.Equal(0, plan.LooseFreedoms);
        Assert.Equal(18, plan.Of("S").Length!.Value.Value, 1e-6);
        Assert.Equal(Math.Sqrt(35 * 35 + 20 * 20), plan.Distance("A", "S")!.Value.Value, 1e-6);
    }

    [Theory]
    [InlineData("B", "there is no feature")]
    [InlineData("A", "named twice")]
    public void Bad_readings_are_refused_in_a_sentence(string to, string words)
    {
        var sample = new Sample("bad", "", [Corner("A", 0, 0)], Readings((ReadingKind.CentreDistance, "A", to, 5, 0.02)));
        Assert.Contains(words, Assert.Throws<RefusedException>(() => Adjust.Solve(sample)).Message);
    }

    [Fact]
    public void An_impossible_triangle_is_said_to_disagree_not_bent_in_silence()
    {
        var sample = new Sample("no", "", [Corner("A", 0, 0), Corner("B", 50, 0), Corner("C", 25, 3)],
            Readings((ReadingKind.CentreDistance, "A", "B", 50, 0.02), (ReadingKind.CentreDistance, "B", "C", 20, 0.02), (ReadingKind.CentreDistance, "A", "C", 20, 0.02)));
        var plan = Adjust.Solve(sample);
        Assert.False(plan.Global.Passes);
        Assert.NotEmpty(plan.Doubts.Indices);
    }
}
