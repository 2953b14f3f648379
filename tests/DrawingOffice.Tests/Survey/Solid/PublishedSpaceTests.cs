using System.Collections.Immutable;
using System.Text.Json;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.DrawingOffice.Tests.Survey.Solid;

[Truth(Grade.Published, "Blankenbach and Willert 2009, resection in space from eight distances, adjusted by Krumm 2020: truth/blankenbach")]
public class PublishedSpaceTests
{
    static JsonElement Truth { get; } = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "truth", "blankenbach", "resection.json"))).RootElement;

    static string[] Names { get; } = [.. Truth.GetProperty("fixed_m").EnumerateArray().Select(p => p[0].GetString()!)];

    static Vec3 Place(JsonElement row, int from) => 1000 * new Vec3(row[from].GetDouble() + 4, row[from + 1].GetDouble() - 24, row[from + 2].GetDouble() - 10);

    /// <summary>Fixed points have their distances from each other for certain: a ± of a ten-thousandth of the readings'.</summary>
    static SolidSample Sample()
    {
        var held = Truth.GetProperty("fixed_m").EnumerateArray().ToDictionary(p => p[0].GetString()!, p => Place(p, 1));
        var std = 1000 * Truth.GetProperty("std_m").GetDouble();
        var readings = Truth.GetProperty("distances_m").EnumerateArray().Select(d => ("MS", d[0].GetString()!, 1000 * d[1].GetDouble(), std)).ToList();
        for (var a = 0; a < Names.Length; a++)
            for (var b = a + 1; b < Names.Length; b++) readings.Add((Names[a], Names[b], held[Names[a]].DistanceTo(held[Names[b]]), 1e-4 * std));
        ImmutableArray<SolidFeature> features =
        [
            .. held.Select(h => new SolidFeature(h.Key, SolidKind.Point) { Sketch = h.Value }),
            new SolidFeature("MS", SolidKind.Point) { Sketch = Place(Truth.GetProperty("approximate_m"), 1) },
        ];
        return new SolidSample("resection", "published", features, [.. readings.Select((r, i) => new SolidReading(i, SolidReadingKind.Distance, r.Item1, r.Item2, r.Item3, r.Item4))]);
    }

    [Fact]
    public void The_new_point_comes_out_as_published()
    {
        var plan = SolidAdjust.Solve(Sample(), searchMirrors: false);
        var published = Place(Truth.GetProperty("adjusted_m"), 0);
        // Printed to 0.1 mm; the fixed points may give way by a ten-thousandth of a reading's ±.
        foreach (var p in Truth.GetProperty("fixed_m").EnumerateArray())
            Assert.Equal(Place(p, 1).DistanceTo(published), plan.Distance("MS", p[0].GetString()!)!.Value.Value, 0.15);
    }

    [Fact]
    public void Its_standard_deviations_come_out_as_published()
    {
        var plan = SolidAdjust.Solve(Sample(), searchMirrors: false);
        // The published ones are scaled by the fit of 8 distances for 3 unknowns.
        var scale = Math.Sqrt(plan.WeightedSumOfSquares / 5);
        var adjusted = Place(Truth.GetProperty("adjusted_m"), 0);
        var rows = Truth.GetProperty("distances_m").EnumerateArray().Select(d => d[0].GetString()!).ToList();
        var held = Truth.GetProperty("fixed_m").EnumerateArray().ToDictionary(p => p[0].GetString()!, p => Place(p, 1));
        // ± of a distance along its own direction u is √(uᵀCu); the published C is only known by its diagonal, so its trace is compared.
        var directions = rows.Select(r => (adjusted - held[r]).Unit).ToList();
        var variances = rows.Select(r => Math.Pow(scale * plan.Distance("MS", r)!.Value.Std, 2)).ToList();
        var covariance = Covariance(directions, variances);
        double[] published = [.. Truth.GetProperty("std_cm").EnumerateArray().Select(s => 10 * s.GetDouble())];
        for (var i = 0; i < 3; i++) Assert.Equal(published[i], Math.Sqrt(covariance[i]), 0.002 * published[i]);
    }

    /// <summary>xx, yy, zz of the symmetric C with uᵀCu as given for eight directions u.</summary>
    static double[] Covariance(List<Vec3> directions, List<double> variances)
    {
        var rows = MathNet.Numerics.LinearAlgebra.Matrix<double>.Build.Dense(directions.Count, 6, (r, c) => directions[r] is var u ? c switch
        {
            0 => u.X * u.X,
            1 => u.Y * u.Y,
            2 => u.Z * u.Z,
            3 => 2 * u.X * u.Y,
            4 => 2 * u.X * u.Z,
            _ => 2 * u.Y * u.Z,
        } : 0);
        return rows.QR().Solve(MathNet.Numerics.LinearAlgebra.Vector<double>.Build.DenseOfEnumerable(variances)).ToArray();
    }

    [Fact]
    public void The_distances_marked_wrong_are_the_doubtful_ones()
    {
        var plan = SolidAdjust.Solve(Sample(), searchMirrors: false);
        var rows = Truth.GetProperty("distances_m").EnumerateArray().Select(d => d[0].GetString()!).ToList();
        var wrong = Truth.GetProperty("wrong").EnumerateArray().Select(w => rows.IndexOf(w.GetString()!)).Order();
        Assert.Equal(wrong, plan.Doubts.Indices.Where(i => i < rows.Count));
        Assert.DoesNotContain(plan.Doubts.Alone, i => i >= rows.Count);
    }
}
