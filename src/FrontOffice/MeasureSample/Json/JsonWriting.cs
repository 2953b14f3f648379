using System.Text.Json;

namespace WitnessMark.FrontOffice.MeasureSample.Json;

/// <summary>Small shapes that an answer is made of.</summary>
static class JsonWriting
{
    /// <summary>Shortest digits that give the same double back; null for a figure that is not there or not finite.</summary>
    public static void WriteFinite(this Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } v && double.IsFinite(v)) json.WriteNumber(name, v);
        else json.WriteNull(name);
    }

    public static void WriteList<T>(this Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> writeFields)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            writeFields(item);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    public static void WriteStrings(this Utf8JsonWriter json, string name, IEnumerable<string> items)
    {
        json.WritePropertyName(name);
        json.WriteWords(items);
    }

    public static void WriteWords(this Utf8JsonWriter json, IEnumerable<string> items)
    {
        json.WriteStartArray();
        foreach (var item in items) json.WriteStringValue(item);
        json.WriteEndArray();
    }

    public static void WriteNumbers(this Utf8JsonWriter json, string name, IEnumerable<int> items)
    {
        json.WritePropertyName(name);
        json.WriteNumbers(items);
    }

    public static void WriteNumbers(this Utf8JsonWriter json, IEnumerable<int> items)
    {
        json.WriteStartArray();
        foreach (var item in items) json.WriteNumberValue(item);
        json.WriteEndArray();
    }

    public static void WritePair(this Utf8JsonWriter json, string from, string to)
    {
        json.WriteString("from", from);
        json.WriteString("to", to);
    }

    /// <param name="value">Signed; the size is written.</param>
    public static void WriteLargest(this Utf8JsonWriter json, int index, double value, IEnumerable<int> tiedWith)
    {
        json.WriteStartObject("largest_normalised_residual");
        json.WriteNumber("index", index);
        json.WriteFinite("value", Math.Abs(value));
        json.WriteNumbers("tied_with", tiedWith);
        json.WriteEndObject();
    }
}
