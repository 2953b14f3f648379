using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.Tests.DrawingOffice.Drafting;

/// <summary>Plates measured by the seeded chance of the project: our own invention.</summary>
static class Surveys
{
    static readonly (string Id, Vec2 At, double Diameter)[] s_plate =
    [
        ("C1", new(0, 0), 0), ("C2", new(150, 0), 0), ("C3", new(150, 60), 0), ("C4", new(95, 95), 0), ("C5", new(0, 95), 0),
        ("H1", new(20, 20), 8.4), ("H2", new(130, 18), 8.4), ("H3", new(70, 50), 25.4), ("H4", new(25, 75), 6.5), ("H5", new(120, 52), 6.5),
    ];

    /// <summary>Centre distances between all pairs by calliper, every diameter, five edges.</summary>
    /// <param name="gross">Added to one reading, mm.</param>
    /// <param name="loose">Leave H5 hanging on a single distance.</param>
    public static Sample Plate(ulong seed, double gross = 0, bool loose = false)
    {
        var chance = new Chance(seed);
        var features = s_plate.Select(p => new Feature(p.Id, p.Diameter > 0 ? FeatureKind.Hole : FeatureKind.Point) { Sketch = p.At + new Vec2(chance.Uniform(-3, 3), chance.Uniform(-3, 3)) });
        var edges = Enumerable.Range(1, 5).Select(i => new Feature($"E{i}", FeatureKind.Edge) { From = $"C{i}", To = $"C{i % 5 + 1}" });
        var readings = ImmutableArray.CreateBuilder<Reading>();
        void Take(ReadingKind kind, string from, string? to, double value) =>
            readings.Add(new(readings.Count, kind, from, to, Math.Round(value + 0.02 * chance.Normal(), 2), 0.02) { Instrument = "calliper" });
        for (var a = 0; a < s_plate.Length; a++)
        {
            for (var b = a + 1; b < s_plate.Length; b++)
            {
                if (loose && s_plate[b].Id == "H5" && a > 0) continue;
                Take(ReadingKind.CentreDistance, s_plate[a].Id, s_plate[b].Id, s_plate[a].At.DistanceTo(s_plate[b].At));
            }
        }
        foreach (var hole in s_plate.Where(p => p.Diameter > 0)) Take(ReadingKind.Diameter, hole.Id, null, hole.Diameter);
        if (gross != 0) readings[17] = readings[17] with { Value = readings[17].Value + gross };
        return new("S-21", "Guard plate", [.. features, .. edges], readings.ToImmutable());
    }
}
