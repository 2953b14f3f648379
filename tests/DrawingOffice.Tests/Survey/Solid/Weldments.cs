using System.Collections.Immutable;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Tests.Survey.Solid;

/// <summary>A box-like weldment made here: five faces with nine corners and holes each, ten edges, measured in four set-ups; 60-odd features, 250-odd readings.</summary>
static class Weldments
{
    public static SolidSample Measured(Chance chance, double sigma = 0.02)
    {
        (Vec3 Normal, Vec3 Through)[] faces = [(new(0, 0, -1), Vec3.Zero), (new(-1, 0, 0.1), Vec3.Zero), (new(0, -1, 0.05), Vec3.Zero), (new(1, 0, 0.08), new(160, 0, 0)), (new(0, 1, 0.1), new(0, 120, 0))];
        var features = ImmutableArray.CreateBuilder<SolidFeature>();
        var readings = ImmutableArray.CreateBuilder<SolidReading>();
        var (places, sizes) = (new Dictionary<string, Vec3>(), new Dictionary<string, double>());
        Vec3 Jitter() => new(chance.Normal(), chance.Normal(), chance.Normal());
        void Add(SolidReadingKind kind, string from, string? to, double value) => readings.Add(new SolidReading(readings.Count, kind, from, to, value + sigma * chance.Normal(), sigma));

        for (var f = 0; f < faces.Length; f++)
        {
            var n = faces[f].Normal.Unit;
            var e1 = (Math.Abs(n.X) < 0.6 ? new Vec3(1, 0, 0) : new Vec3(0, 1, 0)).Cross(n).Unit;
            var e2 = n.Cross(e1);
            features.Add(new SolidFeature($"F{f}", SolidKind.Plane) { Sketch = faces[f].Through + Jitter(), SketchDirection = n + 0.02 * Jitter() });
            for (var k = 0; k < 9; k++)
            {
                var id = $"{(k < 6 ? "P" : "H")}{f}{k}";
                places[id] = faces[f].Through + (30 * (k % 3) + chance.Uniform(10, 30)) * e1 + (30 * (k / 3) + chance.Uniform(10, 30)) * e2;
                if (k >= 6) sizes[id] = chance.Uniform(6, 14);
                features.Add(new SolidFeature(id, k < 6 ? SolidKind.Point : SolidKind.Hole) { Sketch = places[id] + Jitter(), On = $"F{f}" });
            }
            features.Add(new SolidFeature($"E{f}", SolidKind.Edge) { From = $"P{f}0", To = $"P{f}2" });
        }
        Vec3[] ups = [new(0.02, -0.03, 1), new(1, 0.04, -0.02), new(-0.03, 1, 0.05), new(-1, 0.1, 0.1)];
        var order = places.Keys.Order().ToArray();
        for (var s = 0; s < ups.Length; s++)
        {
            features.Add(new SolidFeature($"S{s}", SolidKind.SetUp));
            for (var k = s % 2; k < order.Length; k += s < 2 ? 1 : 2)
                if (!sizes.ContainsKey(order[k])) Add(SolidReadingKind.Height, order[k], $"S{s}", ups[s].Unit.Dot(places[order[k]]) + 200);
        }
        foreach (var (id, d) in sizes) Add(SolidReadingKind.Diameter, id, null, d);
        for (var i = 0; i < order.Length; i++)
            foreach (var j in Enumerable.Range(i + 1, order.Length - i - 1).OrderBy(j => places[order[i]].DistanceTo(places[order[j]])).Take(3))
                Add(SolidReadingKind.Distance, order[i], order[j], places[order[i]].DistanceTo(places[order[j]]));
        return new SolidSample("weldment", "a weldment made here", features.ToImmutable(), readings.ToImmutable());
    }
}
