using System.Collections.Immutable;
using System.Text.Json;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.Maths;

namespace WitnessMark.DrawingOffice.Tests.Survey;

/// <summary>Reads the plate surveys under truth/plates; their README says whence they come.</summary>
static class Plates
{
    public static (Sample Sample, JsonElement Answers) Load(string name)
    {
        var json = JsonDocument.Parse(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "truth", "plates", name + ".json"))).RootElement;
        return (Sample(json), json.GetProperty("answers"));
    }

    static Sample Sample(JsonElement json)
    {
        var points = json.GetProperty("points").EnumerateArray().Select(p => new Feature(Text(p, "id"), Text(p, "type") == "hole" ? FeatureKind.Hole : FeatureKind.Point)
        {
            Sketch = p.GetProperty("sketch_x_mm").ValueKind == JsonValueKind.Null ? null : new Vec2(p.GetProperty("sketch_x_mm").GetDouble(), p.GetProperty("sketch_y_mm").GetDouble()),
        });
        var edges = json.GetProperty("edges").EnumerateArray().Select(e => new Feature(Text(e, "id"), FeatureKind.Edge) { From = Text(e, "from"), To = Text(e, "to") });
        var readings = json.GetProperty("readings").EnumerateArray().Select(r => new Reading(
            r.GetProperty("index").GetInt32(), Kind(Text(r, "kind")), Text(r, "from"), r.TryGetProperty("to", out var to) ? to.GetString() : null,
            r.GetProperty("value_mm").GetDouble(), r.GetProperty("sigma_mm").GetDouble()));
        return new Sample(Text(json, "id"), Text(json, "title"), [.. points, .. edges], [.. readings]);
    }

    static string Text(JsonElement e, string name) => e.GetProperty(name).GetString()!;

    static ReadingKind Kind(string name) => name switch
    {
        "centre_distance" => ReadingKind.CentreDistance,
        "outside_over_holes" => ReadingKind.OutsideOverHoles,
        "inside_between_holes" => ReadingKind.InsideBetweenHoles,
        "edge_to_hole" => ReadingKind.EdgeToHole,
        "diameter" => ReadingKind.Diameter,
        _ => throw new ArgumentException(name),
    };

    public static ImmutableArray<string> Strings(JsonElement e) => [.. e.EnumerateArray().Select(s => s.GetString()!)];
}
