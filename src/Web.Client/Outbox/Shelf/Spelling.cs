using System.Text.Json;
using System.Text.Json.Serialization;
using System.Text.Json.Serialization.Metadata;
using WitnessMark.Web.Client.Wire;

namespace WitnessMark.Web.Client.Outbox.Shelf;

/// <summary>Rows as text and back, spelled as they travel.</summary>
static class Spelling
{
    public static JsonTypeInfo<T> Of<T>() => (JsonTypeInfo<T>)(DeskJson.Default.GetTypeInfo(typeof(T)) ?? WireJson.Default.GetTypeInfo(typeof(T))!);

    public static string Text<T>(T row) => JsonSerializer.Serialize(row, Of<T>());

    /// <summary>Null when the text is no such row: an older version of the app may have written it.</summary>
    public static T? Read<T>(string text) where T : class
    {
        try
        {
            return JsonSerializer.Deserialize(text, Of<T>());
        }
        catch (JsonException)
        {
            return null;
        }
    }

    /// <summary>The same row, however it is spaced.</summary>
    public static bool Same(string one, string other)
    {
        if (one == other) return true;
        try
        {
            using var a = JsonDocument.Parse(one);
            using var b = JsonDocument.Parse(other);
            return JsonElement.DeepEquals(a.RootElement, b.RootElement);
        }
        catch (JsonException)
        {
            return false;
        }
    }
}

/// <summary>One writing into a store of the database.</summary>
sealed record ShelfPut(string Store, string Key, string Text);

sealed record ShelfDrop(string Store, string Key);

sealed record ShelfShift(IReadOnlyList<ShelfPut> Puts, IReadOnlyList<ShelfDrop> Drops);

/// <param name="Fault">The browser's name for why nothing can be kept.</param>
sealed record ShelfRead(string? Fault, IReadOnlyList<Unsent>? Entries, IReadOnlyList<Unsaved>? Decisions, IReadOnlyList<Sent>? Sent, IReadOnlyList<UnsentPicture>? Pictures);

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, IgnoreReadOnlyProperties = true)]
[JsonSerializable(typeof(ShelfShift))]
[JsonSerializable(typeof(ShelfRead))]
[JsonSerializable(typeof(TrayFile))]
sealed partial class ShelfJson : JsonSerializerContext;
