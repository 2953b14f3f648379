using System.Text.Json;
using WitnessMark.DrawingOffice.Survey;
using WitnessMark.FrontOffice.Typed;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MeasureSample.Json;

/// <summary>
/// A survey as JSON: <c>points</c>, <c>edges</c> and <c>readings</c>, in mm (radians where a field says so).
/// Fields that are not used here, such as stored answers, are passed over.
/// </summary>
static class SurveyJson
{
    static readonly JsonDocumentOptions Strict = new() { AllowDuplicateProperties = false };

    public static Sample Read(string text)
    {
        using var document = Parse(text);
        var root = document.RootElement;
        var top = new Place(1);
        if (root.ValueKind != JsonValueKind.Object) throw top.Refuse("file", Shown(root), "a survey is one JSON object with points and readings");
        CheckUnits(root, top);

        var lines = JsonLines.Of(text);
        var draft = new SampleDraft();
        foreach (var (item, place) in Items(root, "points", lines)) draft.Add(PointOf(new(item, place)), place);
        foreach (var (item, place) in Items(root, "edges", lines)) draft.Add(EdgeOf(new(item, place)), place);
        foreach (var (item, place) in Items(root, "readings", lines)) draft.Add(ReadingOf(new(item, place), draft.NextIndex), place);
        foreach (var (item, place) in Items(root, "frames", lines)) draft.Add(FrameOf(new(item, place)), place);
        var fields = new JsonFields(root, top);
        var sample = draft.Finish(fields.Text("id") ?? "survey", fields.Text("title") ?? "", top);
        if (TriangleCheck.Find(sample) is not { } triangle) return sample;
        throw new Place(lines.Of("readings", triangle.Index), $"readings[{triangle.Index}].")
            .Refuse("value_mm", JsonFields.Spelled(sample.Readings[triangle.Index].Value), triangle.Wanted);
    }

    static JsonDocument Parse(string text)
    {
        try
        {
            return JsonDocument.Parse(text, Strict);
        }
        catch (JsonException e)
        {
            var line = (int)(e.LineNumber ?? 0);
            var found = text.Split('\n').ElementAtOrDefault(line)?.Trim() ?? "";
            throw new Place(line + 1).Refuse("file", found, "the JSON breaks off, names a field twice or is misspelt here; save it whole");
        }
    }

    static void CheckUnits(JsonElement root, Place top)
    {
        if (root.TryGetProperty("units", out var units) && units.ValueKind != JsonValueKind.Null && !(units.ValueKind == JsonValueKind.String && units.ValueEquals("mm")))
            throw top.Refuse("units", Shown(units), "the fields of a survey in JSON are in mm; write \"mm\" and convert the values, or use a reading sheet");
    }

    static IEnumerable<(JsonElement, Place)> Items(JsonElement root, string name, JsonLines lines)
    {
        if (!root.TryGetProperty(name, out var list) || list.ValueKind == JsonValueKind.Null) yield break;
        if (list.ValueKind != JsonValueKind.Array) throw new Place(lines.Of(name, 0)).Refuse(name, Shown(list), "give a list");
        var i = 0;
        foreach (var item in list.EnumerateArray())
        {
            var place = new Place(lines.Of(name, i), $"{name}[{i}].");
            if (item.ValueKind != JsonValueKind.Object) throw new Place(place.Line).Refuse($"{name}[{i}]", Shown(item), "give an object in braces");
            yield return (item, place);
            i++;
        }
    }

    static Feature PointOf(JsonFields fields)
    {
        return new Feature(fields.Text("id") ?? "", FeatureWords.Kind(fields.Text("type"), "type", fields.Place))
        {
            Sketch = SketchOf(fields),
            SketchSize = fields.Number("sketch_size_mm"),
            SketchLength = fields.Number("sketch_length_mm"),
            SketchTurn = fields.Number("sketch_turn_rad"),
            From = fields.Text("from"),
            To = fields.Text("to"),
            Condition = FeatureWords.Condition(fields.Text("condition"), "condition", fields.Place),
            Wear = fields.Number("wear_mm"),
        };
    }

    static Feature EdgeOf(JsonFields fields) => new(fields.Text("id") ?? "", FeatureKind.Edge)
    {
        From = fields.Text("from"),
        To = fields.Text("to"),
        Sketch = SketchOf(fields),
        SketchTurn = fields.Number("sketch_turn_rad"),
        Condition = FeatureWords.Condition(fields.Text("condition"), "condition", fields.Place),
        Wear = fields.Number("wear_mm"),
    };

    static PickFrame FrameOf(JsonFields fields) => new(fields.Text("name") ?? "", fields.Needed("scale_std"));

    static Vec2? SketchOf(JsonFields fields) => (fields.Number("sketch_x_mm"), fields.Number("sketch_y_mm")) switch
    {
        (null, null) => null,
        ({ } x, { } y) => new Vec2(x, y),
        (null, { } y) => throw fields.Place.Refuse("sketch_x_mm", null, "give both places of the sketch or neither"),
        ({ } x, null) => throw fields.Place.Refuse("sketch_y_mm", null, "give both places of the sketch or neither"),
    };

    static Reading ReadingOf(JsonFields fields, int index)
    {
        if (fields.Number("index") is { } stated && stated != index)
            throw fields.Place.Refuse("index", JsonFields.Spelled(stated), $"readings are numbered from 0 in order, so this one is {index}");
        var rule = KindRule.Named(fields.Text("kind"))
            ?? throw fields.Place.Refuse("kind", fields.Text("kind"), $"write one of {string.Join(", ", KindRule.All.Select(r => r.Code))}");
        var unit = rule.Measure is Measure.Angle or Measure.Direction ? "rad" : "mm";
        var wrong = unit == "rad" ? "mm" : "rad";
        if (fields.Number($"value_{wrong}") is { } v) throw fields.Place.Refuse($"value_{wrong}", JsonFields.Spelled(v), $"a {rule.Words} is read in {unit}; give value_{unit}");
        var reading = ValueOf(fields, rule, unit) with
        {
            Index = index,
            Instrument = fields.Text("instrument") ?? "",
        };
        return reading with { Sigma = SigmaOf(fields, rule, unit, reading.Instrument) };
    }

    static Reading ValueOf(JsonFields fields, KindRule rule, string unit)
    {
        var from = fields.Text("from") ?? "";
        var to = fields.Text("to");
        switch (rule.Measure)
        {
            case Measure.Place:
                var frame = fields.Text("frame") ?? "paper";
                return new Reading(0, rule.Kind, from, to, ReadingValue.Coordinate(fields.Needed("x_mm"), "x_mm", fields.Place), 0)
                {
                    ValueY = ReadingValue.Coordinate(fields.Needed("y_mm"), "y_mm", fields.Place),
                    Frame = frame,
                };
            case Measure.Touching or Measure.Direction:
                if (fields.Number($"value_{unit}") is { } given and not 0)
                    throw fields.Place.Refuse($"value_{unit}", JsonFields.Spelled(given), $"{rule.Words} is a condition and has no value; leave it out or write 0");
                return new Reading(0, rule.Kind, from, to, 0, 0);
            default:
                return new Reading(0, rule.Kind, from, to, ReadingValue.Checked(rule, fields.Needed($"value_{unit}"), $"value_{unit}", null, fields.Place), 0);
        }
    }

    static double SigmaOf(JsonFields fields, KindRule rule, string unit, string instrument)
    {
        var field = $"sigma_{unit}";
        var given = fields.Number(field);
        if (rule.IsCondition && given is null or 0) return 0;
        var known = Instrument.Usual.FirstOrDefault(i => i.Name == instrument && i.ReadsAngle == (unit == "rad"));
        return SigmaWords.Checked(given ?? known?.StandardUncertainty(), field, fields.Place);
    }

    static string? Shown(JsonElement element) => element.ValueKind == JsonValueKind.String ? element.GetString() : element.GetRawText();
}
