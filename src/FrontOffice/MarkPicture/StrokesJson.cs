using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using System.Text.Json.Serialization;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MarkPicture;

/// <summary>The strokes of a picture as they are kept: a list of <c>{"kind":"arrow","ink":"red","weight":2,"places":[0.1,0.2,0.4,0.5]}</c>.</summary>
public static class StrokesJson
{
    public static string Write(IEnumerable<Stroke> strokes) => JsonSerializer.Serialize(
        [.. strokes.Select(s => new Spelled(s.Kind, s.Ink, s.Weight, [.. s.Places.SelectMany(p => new[] { p.X, p.Y })], s.Text.Length > 0 ? s.Text : null))],
        StrokesContext.Default.SpelledArray);

    /// <summary>Empty text is no strokes. What cannot be drawn is refused with its number.</summary>
    public static Parsed<ImmutableArray<Stroke>> Read(string text)
    {
        if (string.IsNullOrWhiteSpace(text)) return ImmutableArray<Stroke>.Empty;
        try
        {
            var spelled = JsonSerializer.Deserialize(text, StrokesContext.Default.SpelledArray) ?? [];
            if (spelled.Length > Stroke.Most) return Refusal.Of("strokes", $"{spelled.Length}", $"at most {Stroke.Most} are kept on one picture");
            var strokes = ImmutableArray.CreateBuilder<Stroke>(spelled.Length);
            foreach (var (s, i) in spelled.Select((s, i) => (s, i)))
            {
                if (s?.Places is null || s.Places.Length % 2 != 0) return Broken(i, "its places are not pairs");
                var stroke = new Stroke(s.Kind, s.Ink, s.Weight, [.. s.Places.Chunk(2).Select(p => new Vec2(p[0], p[1]))], s.Text ?? "");
                if (stroke.Wrong() is { } wrong) return Broken(i, wrong.Sentence);
                strokes.Add(stroke);
            }
            return strokes.DrainToImmutable();
        }
        catch (JsonException e)
        {
            return Refusal.Of("strokes", $"line {e.LineNumber + 1}", "send them as the page writes them");
        }
    }

    static Refusal Broken(int index, string why) =>
        Refusal.Of("strokes", string.Create(CultureInfo.InvariantCulture, $"number {index + 1}"), why);
}

sealed record Spelled(StrokeKind Kind, Ink Ink, int Weight, double[] Places, string? Text);

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, UseStringEnumConverter = true, DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull)]
[JsonSerializable(typeof(Spelled[]))]
sealed partial class StrokesContext : JsonSerializerContext;
