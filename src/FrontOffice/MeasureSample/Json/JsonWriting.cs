using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace WitnessMark.FrontOffice.MeasureSample.Json;

/// <summary>Small shapes that an answer is made of.</summary>
static class JsonWriting
{
    static readonly JsonWriterOptions Indented = new()
    {
        Indented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>A whole answer: one object, indented, with line feeds whatever the machine.</summary>
    public static string Whole(Action<Utf8JsonWriter> writeFields)
    {
        using var stream = new MemoryStream();
        using (var json = new Utf8JsonWriter(stream, Indented))
        {
            json.WriteStartObject();
            writeFields(json);
            json.WriteEndObject();
        }
        return Encoding.UTF8.GetString(stream.GetBuffer(), 0, (int)stream.Length);
    }

    /// <summary>An object, or null where there is nothing to write.</summary>
    public static void WriteObject<T>(this Utf8JsonWriter json, string name, T? item, Action<T> writeFields) where T : class
    {
        json.WritePropertyName(name);
        if (item is null)
        {
            json.WriteNullValue();
            return;
        }
        json.WriteStartObject();
        writeFields(item);
        json.WriteEndObject();
    }

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
