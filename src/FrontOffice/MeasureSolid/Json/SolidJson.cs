using System.Text.Json;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.DrawingOffice.Survey.Solid;
using WitnessMark.FrontOffice.MeasureSample;
using WitnessMark.FrontOffice.MeasureSample.Json;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasureSolid.Json;

/// <summary>
/// A survey in space as JSON: <c>features</c>, <c>readings</c> and <c>faces</c> that were surveyed flat, in mm (radians where a field says so).
/// Fields that are not used here are passed over.
/// </summary>
static class SolidJson
{
    public static SolidSample Read(string text)
    {
        using var document = SurveyJson.Parse(text);
        var (root, top) = (document.RootElement, new Place(1));
        if (root.ValueKind != JsonValueKind.Object) throw top.Refuse("file", SurveyJson.Shown(root), "a survey is one JSON object with features and readings");
        SurveyJson.CheckUnits(root, top);
        var lines = JsonLines.Of(text);
        var draft = new SolidDraft();
        foreach (var (item, place) in SurveyJson.Items(root, "features", lines)) draft.Add(FeatureOf(new(item, place)), place);
        foreach (var (item, place) in SurveyJson.Items(root, "readings", lines)) draft.Add(ReadingOf(new(item, place), draft.NextIndex), place);
        foreach (var (item, place) in SurveyJson.Items(root, "faces", lines)) draft.Add(FaceOf(item, place), place);
        var fields = new JsonFields(root, top);
        return draft.Finish(fields.Text("id") ?? "survey", fields.Text("title") ?? "", top);
    }

    static SolidFeature FeatureOf(JsonFields fields) => new(fields.Text("id") ?? "", SolidWords.Kind(fields.Text("kind"), "kind", fields.Place))
    {
        On = fields.Text("on"),
        From = fields.Text("from"),
        To = fields.Text("to"),
        Sketch = Three(fields, "sketch", "_mm"),
        SketchDirection = Direction(fields),
        SketchSize = fields.Number("sketch_size_mm"),
    };

    static Vec3? Direction(JsonFields fields) => Three(fields, "way", "") is not { } way ? null
        : way.Length > 1e-9 ? way : throw fields.Place.Refuse("way_x", "0", "a direction has a length; give one that is not all nought");

    static Vec3? Three(JsonFields fields, string name, string unit)
    {
        (string Name, double? Value)[] all = [.. new[] { "x", "y", "z" }.Select(a => $"{name}_{a}{unit}").Select(n => (n, fields.Number(n)))];
        if (all.All(a => a.Value is null)) return null;
        foreach (var a in all)
            if (a.Value is null) throw fields.Place.Refuse(a.Name, null, "give all three or none");
        return new(all[0].Value!.Value, all[1].Value!.Value, all[2].Value!.Value);
    }

    static SolidReading ReadingOf(JsonFields fields, int index)
    {
        var rule = SolidRule.Named(fields.Text("kind"))
            ?? throw fields.Place.Refuse("kind", fields.Text("kind"), $"write one of {string.Join(", ", SolidRule.All.Select(r => r.Code))}");
        var wrong = rule.Unit == "rad" ? "value_mm" : "value_rad";
        if (fields.Number(wrong) is { } v) throw fields.Place.Refuse(wrong, JsonFields.Spelled(v), $"{rule.One} is read in {rule.Unit}; give value_{rule.Unit}");
        var instrument = fields.Text("instrument") ?? "";
        var reading = new SolidReading(index, rule.Kind, fields.Text("from") ?? "", fields.Text("to"), ValueOf(fields, rule), SigmaOf(fields, rule, instrument))
        {
            Frame = fields.Text("frame") ?? "",
            At = fields.Text("at"),
            Pin = fields.Number("pin_mm"),
            Instrument = instrument,
        };
        if (reading.Pin is { } pin && !(pin > 0)) throw fields.Place.Refuse("pin_mm", JsonFields.Spelled(pin), "a pin has a diameter of more than 0");
        return rule.Measure == Measure.Place ? reading with { ValueY = ReadingValue.Coordinate(fields.Needed("y_mm"), "y_mm", fields.Place) } : reading;
    }

    static double ValueOf(JsonFields fields, SolidRule rule)
    {
        var field = $"value_{rule.Unit}";
        if (rule.Measure == Measure.Place) return ReadingValue.Coordinate(fields.Needed("x_mm"), "x_mm", fields.Place);
        if (!rule.IsCondition) return ReadingValue.Checked(rule, fields.Needed(field), field, null, fields.Place);
        return fields.Number(field) is { } given and not 0
            ? throw fields.Place.Refuse(field, JsonFields.Spelled(given), $"{rule.Words} is a condition and has no value; leave it out or write 0") : 0;
    }

    static double SigmaOf(JsonFields fields, SolidRule rule, string instrument)
    {
        var field = $"sigma_{rule.Unit}";
        var given = fields.Number(field);
        if (rule.IsCondition && given is null or 0) return 0;
        var known = Instrument.Usual.FirstOrDefault(i => i.Name == instrument && i.ReadsAngle == (rule.Unit == "rad"));
        return SigmaWords.Checked(given ?? known?.StandardUncertainty(), field, fields.Place);
    }

    /// <summary>A flat survey in its own JSON, under <c>survey</c>.</summary>
    static FlatFace FaceOf(JsonElement item, Place place)
    {
        var fields = new JsonFields(item, place);
        if (!item.TryGetProperty("survey", out var survey)) throw place.Refuse("survey", null, "give the face's flat survey as an object");
        var flat = SampleFile.Read(survey.GetRawText());
        if (flat.Refusal is { } refusal) throw new RefusedException(refusal.In($"{place.Prefix}survey"));
        return new(fields.Text("plane") ?? "", flat.Value) { Along = Direction(fields) };
    }
}
