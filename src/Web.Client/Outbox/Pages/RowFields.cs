using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using WitnessMark.Web.Client.Outbox.Shelf;

namespace WitnessMark.Web.Client.Outbox.Pages;

/// <summary>A row read as fields with names a person knows, for choosing between two and for mending one.</summary>
static class RowFields
{
    /// <param name="Mine">As kept on this device; null where it has no such field.</param>
    public readonly record struct Pair(string Name, string? Mine, string? Theirs, bool Same);

    /// <summary>Field by field, also those within a field: of a job's hours only the guess that differs is shown as differing.</summary>
    public static IReadOnlyList<Pair> Compare(string mine, string theirs)
    {
        var (a, b) = (Fields(Read(mine), "").ToDictionary(f => f.Name, f => f.Value), Fields(Read(theirs), "").ToDictionary(f => f.Name, f => f.Value));
        return [.. a.Keys.Union(b.Keys).Select(k => new Pair(k, Shown(a, k), Shown(b, k), a.ContainsKey(k) == b.ContainsKey(k) && JsonNode.DeepEquals(a.GetValueOrDefault(k), b.GetValueOrDefault(k))))];
    }

    /// <summary>Words, numbers and times that a person may set right.</summary>
    public static IReadOnlyList<(string Key, string Words, string Value)> Mendable(string row) =>
        [.. Read(row).Where(f => !IsId(f.Key) && f.Key != "device" && f.Value is JsonValue v && v.GetValueKind() is JsonValueKind.String or JsonValueKind.Number)
            .Select(f => (f.Key, Words(f.Key), f.Value!.GetValueKind() == JsonValueKind.String ? f.Value.GetValue<string>() : f.Value.ToJsonString()))];

    /// <returns>The row with that field set; null when a number was wanted and something else typed.</returns>
    public static string? With(string row, string key, string typed)
    {
        var fields = Read(row);
        if (fields[key]?.GetValueKind() != JsonValueKind.Number) fields[key] = typed;
        else if (double.TryParse(typed, CultureInfo.InvariantCulture, out var number)) fields[key] = number;
        else return null;
        return fields.ToJsonString(Plain);
    }

    /// <summary>A few words that tell one row from another.</summary>
    public static string Gist(string row) =>
        string.Join(" · ", Read(row).Where(f => !IsId(f.Key) && f.Key is not ("device" or "at" or "takenAt" or "startedAt" or "pictures"))
            .Select(f => f.Value).OfType<JsonValue>().Select(Told).Where(t => t.Length > 0).Take(4));

    static readonly JsonSerializerOptions Plain = new() { TypeInfoResolver = ShelfJson.Default };

    static JsonObject Read(string row)
    {
        try
        {
            return JsonNode.Parse(row) as JsonObject ?? [];
        }
        catch (JsonException)
        {
            return [];
        }
    }

    static IEnumerable<(string Name, JsonNode? Value)> Fields(JsonObject row, string before) =>
        row.Where(f => !IsId(f.Key)).SelectMany(f => Fields(f.Value, before.Length == 0 ? Words(f.Key) : $"{before}, {Words(f.Key).ToLowerInvariant()}"));

    static IEnumerable<(string Name, JsonNode? Value)> Fields(JsonNode? value, string name) => value switch
    {
        JsonObject { Count: > 0 } within => Fields(within, name),
        JsonArray { Count: > 0 } list when list.Any(i => i is JsonObject) => list.SelectMany((item, i) => Fields(item, $"{name} {i + 1}")),
        _ => [(name, value)],
    };

    static string? Shown(Dictionary<string, JsonNode?> fields, string key) => !fields.TryGetValue(key, out var value) ? null : value switch
    {
        null => "",
        JsonValue v => Told(v),
        JsonArray { Count: 0 } => "none",
        JsonArray list when list.All(i => i is JsonValue v && v.TryGetValue<string>(out var text) && Guid.TryParse(text, out _)) => list.Count == 1 ? "1 row" : $"{list.Count} rows",
        JsonArray list => string.Join(", ", list.Select(i => i is JsonValue v ? Told(v) : i?.ToJsonString())),
        _ => value.ToJsonString(),
    };

    static string Told(JsonValue value) => value.GetValueKind() switch
    {
        JsonValueKind.String => value.GetValue<string>(),
        JsonValueKind.True => "yes",
        JsonValueKind.False => "no",
        _ => value.ToJsonString(),
    };

    static bool IsId(string key) => key == "id" || key.EndsWith("Id", StringComparison.Ordinal);

    /// <summary>placedOn: Placed on.</summary>
    static string Words(string key) => string.Concat(key.Select((c, i) => i == 0 ? $"{char.ToUpperInvariant(c)}" : char.IsUpper(c) ? $" {char.ToLowerInvariant(c)}" : $"{c}"));
}
