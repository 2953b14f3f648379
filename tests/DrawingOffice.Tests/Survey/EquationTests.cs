using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Network;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey;

[Truth(Grade.Property, "central differences; invariance of readings under shift and turn of the whole plate")]
public class EquationTests
{
    /// <summary>One feature of every sort, one reading of every kind.</summary>
    public static Sample Everything { get; } = Make();

    static Sample Make()
    {
        ImmutableArray<Feature> features =
        [
            new("A", FeatureKind.Point) { Sketch = new(1, 2) }, new("B", FeatureKind.Point) { Sketch = new(81, -3) },
            new("C", FeatureKind.Point) { Sketch = new(78, 44) }, new("H", FeatureKind.Hole) { Sketch = new(30, 20), SketchSize = 9 },
            new("K", FeatureKind.Hole) { Sketch = new(55, 28), SketchSize = 12 }, new("S", FeatureKind.Slot) { Sketch = new(40, 8), SketchTurn = 0.3, SketchLength = 14, SketchSize = 6 },
            new("E", FeatureKind.Edge) { From = "A", To = "B" }, new("G", FeatureKind.Edge) { From = "B", To = "C" },
            new("F", FeatureKind.Edge) { Sketch = new(10, 50), SketchTurn = 0.1 }, new("F2", FeatureKind.Edge) { Sketch = new(12, 5), SketchTurn = 3.2 },
            new("R", FeatureKind.Arc) { From = "A", To = "C", Sketch = new(60, 10), SketchSize = 40 }, new("Q", FeatureKind.Arc) { Sketch = new(20, 30), SketchSize = 15 },
        ];
        (ReadingKind, string, string?, double)[] readings =
        [
            (ReadingKind.CentreDistance, "A", "H", 35), (ReadingKind.OutsideOverHoles, "H", "K", 40), (ReadingKind.InsideBetweenHoles, "H", "K", 15),
            (ReadingKind.EdgeToHole, "H", "E", 12), (ReadingKind.EdgeToHole, "K", "F", 14), (ReadingKind.CentreToEdge, "S", "E", 9), (ReadingKind.CentreToEdge, "A", "F", 44),
            (ReadingKind.LengthAlongEdge, "E", null, 80), (ReadingKind.AcrossEdges, "E", "F", 46), (ReadingKind.AcrossEdges, "F", "F2", 44), (ReadingKind.AcrossEdges, "F", "G", 40),
            (ReadingKind.Diameter, "H", null, 9), (ReadingKind.SlotWidth, "S", null, 6), (ReadingKind.SlotLength, "S", null, 20), (ReadingKind.Radius, "R", null, 40),
            (ReadingKind.Chord, "R", null, 85), (ReadingKind.Rise, "R", null, 20), (ReadingKind.AngleBetweenEdges, "E", "G", 1.6), (ReadingKind.AngleBetweenEdges, "E", "F", 0.1),
            (ReadingKind.Picked, "H", null, 131), (ReadingKind.Picked, "K", null, 150), (ReadingKind.On, "S", "F", 0), (ReadingKind.On, "H", "R", 0), (ReadingKind.Parallel, "E", "F", 0),
            (ReadingKind.Parallel, "S", "E", 0), (ReadingKind.Square, "E", "G", 0), (ReadingKind.Tangent, "F", "Q", 0), (ReadingKind.Tangent, "Q", "R", 0), (ReadingKind.Tangent, "H", "E", 0),
        ];
        return new Sample("all", "one of everything", features,
            [.. readings.Select((r, i) => new Reading(i, r.Item1, r.Item2, r.Item3, r.Item4, 0.02) { ValueY = r.Item1 == ReadingKind.Picked ? 17 + i : 0 })]);
    }

    [Fact]
    public void Derivatives_agree_with_differences()
    {
        var solver = new Solver(Everything);
        var x = Start.From(solver, CancellationToken.None)[0];
        Differences.Agree(solver.Equations, x, 1e-7, r => $"{solver.Equations.Rows[r].Kind}");
    }

    [Fact]
    public void No_reading_sees_a_shift_or_turn_of_the_whole_plate()
    {
        var solver = new Solver(Everything);
        var x = Start.From(solver, CancellationToken.None)[0];
        solver.Equations.Linearise(x, new double[solver.Equations.Rows.Length]);
        foreach (var motion in solver.Layout.DatumMotions(x, new Vec2(13, -7)))
            for (var r = 0; r < solver.Equations.Rows.Length; r++)
                Assert.InRange(solver.Equations.Jacobian.Dot(r, motion), -1e-12, 1e-12);
    }

    [Fact]
    public void Results_between_features_do_not_change_with_where_the_sketch_lies()
    {
        var sample = Simulated.Plate(15, 4, new Chance(3));
        var moved = sample with { Features = [.. sample.Features.Select(f => f with { Sketch = f.Sketch!.Value.Turned(2.1) + new Vec2(500, -900) })] };
        foreach (var (a, b) in Adjust.Solve(sample).Distances().Zip(Adjust.Solve(moved).Distances()))
        {
            Assert.Equal(a.Distance, b.Distance, 1e-9);
            Assert.Equal(a.Std, b.Std, 1e-9);
        }
    }
}
