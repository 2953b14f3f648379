using System.Text;
using System.Text.Json;

namespace WitnessMark.FrontOffice.MeasureSample.Json;

/// <summary>On which line each item of the top object's lists begins, which a parsed document no longer knows.</summary>
sealed class JsonLines
{
    readonly Dictionary<string, List<int>> _lines = [];

    /// <param name="text">JSON that has been found whole.</param>
    public static JsonLines Of(string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        var found = new JsonLines();
        var reader = new Utf8JsonReader(bytes);
        var list = new List<int>();
        var (line, counted) = (1, 0);
        while (reader.Read())
        {
            if (reader.TokenType == JsonTokenType.PropertyName && reader.CurrentDepth == 1) found._lines[reader.GetString()!] = list = [];
            if (reader.CurrentDepth != 2 || reader.TokenType is JsonTokenType.PropertyName or JsonTokenType.EndObject or JsonTokenType.EndArray) continue;
            var at = (int)reader.TokenStartIndex;
            line += bytes.AsSpan(counted..at).Count((byte)'\n');
            counted = at;
            list.Add(line);
        }
        return found;
    }

    /// <summary>1 when the list or the item is not there.</summary>
    public int Of(string list, int item) => _lines.TryGetValue(list, out var lines) && item < lines.Count ? lines[item] : 1;
}
