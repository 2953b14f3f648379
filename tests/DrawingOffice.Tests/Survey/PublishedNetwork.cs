using System.Collections.Immutable;
using System.Text.Json;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Tests.Survey;

/// <summary>A trilateration network from a textbook, truth/krumm, in mm from its first point.</summary>
/// <param name="Fixed">Points whose place is given; empty for a free network.</param>
/// <param name="Adjusted">Published place, its standard deviations in x and y, mm.</param>
sealed record PublishedNetwork(Sample Sample, ImmutableArray<string> Fixed, ImmutableArray<(string Id, Vec2 At, double StdX, double StdY)> Adjusted)
{
    public static PublishedNetwork Load(string name)
    {
        var json = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "truth", "krumm", name + ".json"))).RootElement;
        var rows = json.GetProperty("approximate_m").EnumerateArray().ToArray();
        var (originX, originY) = (rows[0][1].GetDouble(), rows[0][2].GetDouble());
        Vec2 Place(JsonElement x, JsonElement y) => 1000 * new Vec2(x.GetDouble() - originX, y.GetDouble() - originY);

        ImmutableArray<Feature> features = [.. rows.Select(p => new Feature(p[0].GetString()!, FeatureKind.Point) { Sketch = Place(p[1], p[2]) })];
        ImmutableArray<string> held = [.. json.GetProperty("fixed").EnumerateArray().Select(f => f.GetString()!)];
        var readings = json.GetProperty("distances_m").EnumerateArray().Select(d => (d[0].GetString()!, d[1].GetString()!, 1000 * d[2].GetDouble(), 1000 * d[3].GetDouble())).ToList();
        // Fixed points have their distances from each other for certain: a ± of a hundred-thousandth of the readings'.
        var sure = 1e-5 * readings.Min(r => r.Item4);
        for (var a = 0; a < held.Length; a++)
            for (var b = a + 1; b < held.Length; b++)
                readings.Add((held[a], held[b], At(held[a]).DistanceTo(At(held[b])), sure));
        Vec2 At(string id) => features.First(f => f.Id == id).Sketch!.Value;

        return new PublishedNetwork(
            new Sample(name, json.GetProperty("title").GetString()!, features, [.. readings.Select((r, i) => new Reading(i, ReadingKind.CentreDistance, r.Item1, r.Item2, r.Item3, r.Item4))]),
            held,
            [.. json.GetProperty("adjusted").EnumerateArray().Select(a => (a[0].GetString()!, Place(a[1], a[3]), 10 * a[2].GetDouble(), 10 * a[4].GetDouble()))]);
    }
}
