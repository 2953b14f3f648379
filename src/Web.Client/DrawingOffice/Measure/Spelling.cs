using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.Web.Client.DrawingOffice.Measure;

/// <summary>Features in the words of the reading sheet, and back.</summary>
public static class Spelling
{
    public static string Words(this FeatureKind kind) => kind == FeatureKind.Point ? "corner" : kind.ToString().ToLowerInvariant();

    public static SketchedFeature Written(Feature f) => new(
        f.Id, f.Kind.Words(), f.From ?? "", f.To ?? "", f.Sketch?.X, f.Sketch?.Y, f.SketchTurn, f.SketchSize, f.SketchLength)
    {
        Condition = f.Condition == FeatureCondition.Sound ? null : ConditionWords.Of(f.Condition),
        Wear = f.Wear,
    };

    /// <summary>Null when the kind is none that the survey knows.</summary>
    public static Feature? Read(SketchedFeature f) => KindOf(f.Kind) is { } kind
        ? new(f.Id, kind)
        {
            Sketch = f is { X: { } x, Y: { } y } ? new Vec2(x, y) : null,
            SketchTurn = f.Turn,
            SketchSize = f.Size,
            SketchLength = f.Length,
            Condition = ConditionWords.Named(f.Condition) ?? FeatureCondition.Sound,
            Wear = f.Wear,
            From = f.From.Length > 0 ? f.From : null,
            To = f.To.Length > 0 ? f.To : null,
        }
        : null;

    static FeatureKind? KindOf(string words) => words.Trim().ToLowerInvariant() switch
    {
        "corner" or "point" => FeatureKind.Point,
        "hole" => FeatureKind.Hole,
        "slot" => FeatureKind.Slot,
        "edge" => FeatureKind.Edge,
        "arc" => FeatureKind.Arc,
        _ => null,
    };
}
