using System.Text.Json;
using System.Text.Json.Serialization;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;

namespace WitnessMark.Records;

/// <summary>Values with parts of their own, kept as JSON text.</summary>
static class JsonText
{
    static readonly JsonSerializerOptions Spelling = new(JsonSerializerDefaults.General)
    {
        // What follows from the rest is not kept twice.
        IgnoreReadOnlyProperties = true,
        Converters = { new JsonStringEnumConverter() },
    };

    public static string Of<T>(T value) => JsonSerializer.Serialize(value, Spelling);

    public static T Read<T>(string text) => JsonSerializer.Deserialize<T>(text, Spelling)!;

    /// <summary>Two values are one when their texts are: immutable arrays compare by reference otherwise.</summary>
    public static PropertyBuilder<T> HasJson<T>(this PropertyBuilder<T> property) => property.HasConversion(
        new ValueConverter<T, string>(v => Of(v), text => Read<T>(text)),
        new ValueComparer<T>((a, b) => Of(a) == Of(b), v => Of(v).GetHashCode(StringComparison.Ordinal), v => v));
}
