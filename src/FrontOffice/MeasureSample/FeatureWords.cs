using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.Typed;

namespace WitnessMark.FrontOffice.MeasureSample;

/// <summary>Kinds of features as people name them.</summary>
static class FeatureWords
{
    public static FeatureKind Kind(string? word, string field, Place place) => word?.ToLowerInvariant() switch
    {
        "corner" or "point" => FeatureKind.Point,
        "hole" => FeatureKind.Hole,
        "slot" => FeatureKind.Slot,
        "edge" => FeatureKind.Edge,
        "arc" => FeatureKind.Arc,
        _ => throw place.Refuse(field, word, "write corner, hole, slot, edge or arc"),
    };

    public static FeatureCondition Condition(string? word, string field, Place place) =>
        ConditionWords.Named(word) ?? throw place.Refuse(field, word, "write sound, worn, rusted, bent or repaired");

    public static string One(FeatureKind kind) => kind switch
    {
        FeatureKind.Edge => "an edge",
        FeatureKind.Arc => "an arc",
        _ => $"a {kind.ToString().ToLowerInvariant()}",
    };
}
