using System.Text.Json;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.MeasureSample.Json;

/// <summary>Distances between all centres in the order of the file, and sizes; each determined, or named as not determined.</summary>
static class AnswerSizes
{
    public static void Write(Utf8JsonWriter json, Plan plan)
    {
        WriteDistances(json, plan);
        Write(json, plan, FeatureKind.Hole, "diameters", "diameter_mm", ReadingKind.Diameter);
        if (plan.Features.Any(f => f.Kind == FeatureKind.Arc)) Write(json, plan, FeatureKind.Arc, "radii", "radius_mm", ReadingKind.Radius);
        if (!plan.Features.Any(f => f.Kind == FeatureKind.Slot)) return;
        Write(json, plan, FeatureKind.Slot, "slot_widths", "width_mm", ReadingKind.SlotWidth);
        Write(json, plan, FeatureKind.Slot, "slot_lengths", "length_mm", ReadingKind.SlotLength);
    }

    /// <summary>The ± of half a million pairs takes most of the time of a large answer, so each pair is asked once.</summary>
    static void WriteDistances(Utf8JsonWriter json, Plan plan)
    {
        var determined = new HashSet<(string, string)>();
        AnswerJson.WriteDistances(json, "distances", plan.Distances().Select(d =>
        {
            determined.Add((d.From, d.To));
            return d;
        }));
        string[] centres = [.. plan.Features.Where(f => f.Kind != FeatureKind.Edge).Select(f => f.Id)];
        json.WriteStartArray("undetermined_distances");
        for (var a = 0; a < centres.Length; a++)
            for (var b = a + 1; b < centres.Length; b++)
                if (!determined.Contains((centres[a], centres[b]))) json.WriteWords([centres[a], centres[b]]);
        json.WriteEndArray();
    }

    static void Write(Utf8JsonWriter json, Plan plan, FeatureKind kind, string list, string field, ReadingKind quantity)
    {
        var sizes = plan.Features.Where(f => f.Kind == kind).Select(f => (f.Id, Size: plan.Quantity(quantity, f.Id))).ToList();
        json.WriteList(list, sizes.Where(s => s.Size is not null), s =>
        {
            json.WriteString("id", s.Id);
            json.WriteFinite(field, s.Size!.Value.Value);
            json.WriteFinite("std_mm", s.Size.Value.Std);
        });
        json.WriteStrings($"undetermined_{list}", sizes.Where(s => s.Size is null).Select(s => s.Id));
    }
}
