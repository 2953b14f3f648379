using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.DrawingOffice.Survey.Solid.Network;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey.Solid;

[Truth(Grade.Property, "central differences; invariance of readings under shift and turn of the whole part")]
public class SolidEquationTests
{
    /// <summary>One feature of every sort, one reading of every kind.</summary>
    static SolidSample Everything { get; } = Make();

    static SolidSample Make()
    {
        ImmutableArray<SolidFeature> features =
        [
            new("A", SolidKind.Point) { Sketch = new(1, 2, 3) }, new("B", SolidKind.Point) { Sketch = new(81, -3, 6) }, new("C", SolidKind.Point) { Sketch = new(78, 44, -5) },
            new("D", SolidKind.Point) { Sketch = new(60, 30, 20), On = "Q" },
            new("P", SolidKind.Plane) { Sketch = new(10, 5, 1), SketchDirection = new(0.1, 0.2, 2) }, new("Q", SolidKind.Plane) { Sketch = new(0, 5, 30), SketchDirection = new(-1, 0.3, 0.1) },
            new("R", SolidKind.Plane) { Sketch = new(10, 5, 31), SketchDirection = new(0.2, 0.1, -1) },
            new("H", SolidKind.Hole) { Sketch = new(30, 20, 2), SketchSize = 9, On = "P" }, new("K", SolidKind.Hole) { Sketch = new(55, 28, 4), SketchSize = 12, On = "P" },
            new("L", SolidKind.Hole) { Sketch = new(5, 28, 34), SketchSize = 8, SketchDirection = new(1, 0.1, 0.2) }, new("M", SolidKind.Hole) { Sketch = new(15, 8, 14), SketchSize = 7 },
            new("E", SolidKind.Edge) { From = "A", To = "B" }, new("G", SolidKind.Edge) { From = "P", To = "Q", Sketch = new(1, 20, 2), SketchDirection = new(0.1, 1, 0.1) },
            new("F", SolidKind.Edge) { Sketch = new(10, 50, 7), SketchDirection = new(1, 0.2, 0.1) }, new("J", SolidKind.Edge) { Sketch = new(12, 5, 2), SketchDirection = new(1, 0.4, 0.1), On = "P" },
            new("U", SolidKind.Edge) { Sketch = new(12, 45, 2), SketchDirection = new(1, 0.5, 0.1), On = "P" },
            new("T", SolidKind.Cylinder) { Sketch = new(40, 10, 25), SketchDirection = new(0.2, 1, 0.3), SketchSize = 20 },
            new("S", SolidKind.SetUp) { SketchDirection = new(0.3, 0.1, 1) }, new("S2", SolidKind.SetUp) { SketchDirection = new(1, 0.1, 0.1) },
        ];
        (SolidReadingKind, string, string?, double, string?)[] readings =
        [
            (SolidReadingKind.Distance, "A", "H", 35, null), (SolidReadingKind.OverHoles, "H", "K", 40, null), (SolidReadingKind.BetweenHoles, "H", "K", 15, null),
            (SolidReadingKind.LengthAlongEdge, "E", null, 80, null), (SolidReadingKind.PointToEdge, "C", "E", 40, null), (SolidReadingKind.PointToEdge, "C", "F", 40, null),
            (SolidReadingKind.PointToEdge, "H", "T", 12, null), (SolidReadingKind.HoleToEdge, "K", "G", 14, null), (SolidReadingKind.AcrossEdges, "E", "F", 50, null),
            (SolidReadingKind.PointToPlane, "C", "P", 9, null), (SolidReadingKind.NearSideToPlane, "H", "Q", 20, null), (SolidReadingKind.FarSideToPlane, "L", "P", 40, null),
            (SolidReadingKind.NearSideToPlane, "T", "P", 15, "C"), (SolidReadingKind.FarSideToPlane, "M", "Q", 15, null), (SolidReadingKind.Depth, "P", "R", 30, "A"), (SolidReadingKind.Thickness, "R", "P", 30, null),
            (SolidReadingKind.Height, "A", "S", 12, null), (SolidReadingKind.Height, "R", "S", 42, "B"), (SolidReadingKind.HeightOverPin, "H", "S2", 40, null), (SolidReadingKind.HeightUnderPin, "T", "S", 22, "A"),
            (SolidReadingKind.HeightOverPin, "T", "S", 42, null), (SolidReadingKind.Diameter, "H", null, 9, null), (SolidReadingKind.Diameter, "T", null, 20, null), (SolidReadingKind.Angle, "P", "Q", 1.5, null),
            (SolidReadingKind.Angle, "P", "F", 0.2, null), (SolidReadingKind.Angle, "E", "F", 0.2, null), (SolidReadingKind.Angle, "L", "P", 0.3, null), (SolidReadingKind.OnFace, "A", "P", 100, null),
            (SolidReadingKind.OnFace, "B", "P", 180, null), (SolidReadingKind.OnFace, "K", "P", 130, null), (SolidReadingKind.On, "A", "P", 0, null), (SolidReadingKind.On, "C", "F", 0, null), (SolidReadingKind.On, "C", "T", 0, null),
            (SolidReadingKind.On, "A", "L", 0, null), (SolidReadingKind.On, "C", "H", 0, null), (SolidReadingKind.On, "F", "R", 0, null), (SolidReadingKind.On, "E", "R", 0, null), (SolidReadingKind.On, "H", "U", 0, null),
            (SolidReadingKind.Parallel, "P", "R", 0, null), (SolidReadingKind.Parallel, "F", "P", 0, null), (SolidReadingKind.Parallel, "J", "U", 0, null), (SolidReadingKind.Parallel, "E", "F", 0, null),
            (SolidReadingKind.Square, "P", "Q", 0, null), (SolidReadingKind.Square, "T", "P", 0, null), (SolidReadingKind.Square, "S", "S2", 0, null),
        ];
        return new SolidSample("all", "one of everything", features,
            [.. readings.Select((r, i) => new SolidReading(i, r.Item1, r.Item2, r.Item3, r.Item4, 0.02) { At = r.Item5, ValueY = r.Item1 == SolidReadingKind.OnFace ? 17 + i : 0 })]);
    }

    static double[] Start(SolidSolver solver)
    {
        var x = SolidStart.From(solver, CancellationToken.None);
        // Off the gauges too, so that their slopes are seen where they are not 0.
        for (var u = 0; u < x.Length; u++) x[u] += 0.3 * Math.Sin(u);
        return x;
    }

    [Fact]
    public void Derivatives_agree_with_differences()
    {
        SolidCheck.Verify(Everything);
        var solver = new SolidSolver(Everything);
        var x = Start(solver);
        Differences.Agree(solver.Equations, x, 1e-6, r => $"{solver.Equations.Rows[r]}");
    }

    [Fact]
    public void No_reading_sees_a_shift_or_turn_of_the_whole_part()
    {
        var solver = new SolidSolver(Everything);
        var x = SolidStart.From(solver, CancellationToken.None);
        // The rows without effect hold at any start that is set down by the book; here they are brought back to it.
        x = solver.Minimise(x, [.. solver.Equations.Rows.Select(o => o.Form is Form.Length or Form.Foot or Form.FrameFlat ? 1.0 : 0)], CancellationToken.None).X;
        var (rows, f) = (solver.Equations.Rows, new double[solver.Equations.Rows.Length]);
        solver.Equations.Linearise(x, f);
        foreach (var motion in solver.Layout.DatumMotions(x, new Vec3(13, -7, 4)))
            for (var r = 0; r < rows.Length; r++)
            {
                var seen = solver.Equations.Jacobian.Dot(r, motion);
                // Two components across a line turn with the part; their squares together stay.
                if (rows[r].Form is Form.Skew or Form.Beside) seen = rows[r].Part == 1 ? 0 : f[r] * seen + f[r + 1] * solver.Equations.Jacobian.Dot(r + 1, motion);
                Assert.True(Math.Abs(seen) < 1e-8, $"{rows[r]}: {seen}");
            }
    }
}
