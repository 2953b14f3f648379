using System.Globalization;
using System.Text.Json;
using WitnessMark.FrontOffice.Typed;

namespace WitnessMark.FrontOffice.MeasureSample.Json;

/// <summary>The fields of one JSON object, each refused by name when it is not what it should be. Null counts as absent.</summary>
readonly record struct JsonFields(JsonElement Element, Place Place)
{
    public string? Text(string field) => Find(field) switch
    {
        null => null,
        { ValueKind: JsonValueKind.String } e => e.GetString(),
        { } e => throw Place.Refuse(field, e.GetRawText(), "give a text in quotes"),
    };

    /// <summary>A finite number.</summary>
    public double? Number(string field) => Find(field) switch
    {
        null => null,
        { ValueKind: JsonValueKind.Number } e when double.IsFinite(e.GetDouble()) => e.GetDouble(),
        { } e => throw Place.Refuse(field, e.GetRawText(), "give a plain finite number without quotes"),
    };

    public double Needed(string field) => Number(field) ?? throw Place.Refuse(field, null, "give a plain finite number");

    JsonElement? Find(string field) =>
        Element.TryGetProperty(field, out var found) && found.ValueKind != JsonValueKind.Null ? found : null;

    public static string Spelled(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
