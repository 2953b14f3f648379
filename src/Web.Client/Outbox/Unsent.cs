using System.Text.Json;
using System.Text.Json.Serialization;
using WitnessMark.Stores;

namespace WitnessMark.Web.Client.Outbox;

/// <summary>One entry made here that the host has not acknowledged: a reading or a withdrawal.</summary>
public sealed record Unsent(ReadingEntry? Reading, Withdrawal? Withdrawal)
{
    public Guid Id => Reading?.Id ?? Withdrawal?.Id ?? Guid.Empty;

    public string Text => JsonSerializer.Serialize(this, UnsentJson.Default.Unsent);

    /// <summary>Null when what was kept is no entry.</summary>
    public static Unsent? Read(string text)
    {
        try
        {
            var entry = JsonSerializer.Deserialize(text, UnsentJson.Default.Unsent);
            return entry is null || entry.Id == Guid.Empty ? null : entry;
        }
        catch (JsonException)
        {
            return null;
        }
    }
}

[JsonSourceGenerationOptions(JsonSerializerDefaults.Web, IgnoreReadOnlyProperties = true)]
[JsonSerializable(typeof(Unsent))]
sealed partial class UnsentJson : JsonSerializerContext;
