using System.Text.Json;
using WitnessMark.DrawingOffice.Survey;

namespace WitnessMark.FrontOffice.MeasureSample.Json;

/// <summary>Distances between all centres in the order of the file, and sizes; each determined, or named as not determined.</summary>
static class AnswerSizes
{
    public static void Write(Utf8JsonWriter json, Plan plan)
    {
        json.WriteList("distances", plan.Distances(), d =>
        {
            json.WritePair(d.From, d.To);
            json.WriteFinite("distance_mm", d.Distance);
            json.WriteFinite("std_mm", d.Std);
        });
        json.WriteStartArray("undetermined_distances");
        foreach (var (a, b) in plan.UndeterminedDistances())
        {
            json.WriteStartArray();
            json.WriteStringValue(a);
            json.WriteStringValue(b);
            json.WriteEndArray();
        }
        json.WriteEndArray();
        Write(json, plan, FeatureKind.Hole, "diameters", "diameter_mm", ReadingKind.Diameter);
        if (plan.Features.Any(f => f.Kind == FeatureKind.Arc)) Write(json, plan, FeatureKind.Arc, "radii", "radius_mm", ReadingKind.Radius);
        if (!plan.Features.Any(f => f.Kind == FeatureKind.Slot)) return;
        Write(json, plan, FeatureKind.Slot, "slot_widths", "width_mm", ReadingKind.SlotWidth);
        Write(json, plan, FeatureKind.Slot, "slot_lengths", "length_mm", ReadingKind.SlotLength);
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
