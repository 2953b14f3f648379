using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using WitnessMark.Maths;

namespace WitnessMark.FrontOffice.MakeShape;

public enum NodeKind { Thing, List, Value }

/// <summary>
/// A place in a typed shape with where it stands in the text, so that one value can be changed and all else stays as it was typed.
/// </summary>
/// <param name="Name">Its key; in a list what the thing calls itself, else its place from 1.</param>
/// <param name="Start">First byte of it in the UTF-8 text; it is <paramref name="Length"/> bytes long.</param>
/// <param name="Written">Of a value: as typed, without quotation marks.</param>
public sealed record ShapeNode(string Name, NodeKind Kind, int Start, int Length, string Written, ImmutableArray<ShapeNode> Items)
{
    /// <summary>A value that can be dragged: a plain number.</summary>
    public double? Number => Kind == NodeKind.Value && Quoted is false && double.TryParse(Written, NumberStyles.Float, CultureInfo.InvariantCulture, out var n) ? n : null;

    public bool? Flag => Kind == NodeKind.Value && !Quoted && bool.TryParse(Written, out var on) ? on : null;

    public bool Quoted { get; init; }

    public ShapeNode? this[string name] => Items.FirstOrDefault(i => i.Name == name);

    /// <summary>This place alone, as typed.</summary>
    public string In(string text) => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text), Start, Length);

    /// <summary>The whole of a typed text, or why it is not complete.</summary>
    public static Parsed<ShapeNode> Read(string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        try
        {
            var reader = new Utf8JsonReader(bytes);
            reader.Read();
            var node = Read(ref reader, bytes, "");
            return reader.Read() ? Refusal.Of("shape", "more text after the end", "one whole between { and }") : node;
        }
        catch (JsonException e)
        {
            return Refusal.Of("shape", "this text", "it is not complete JSON here", (int)(e.LineNumber ?? 0) + 1);
        }
    }

    static ShapeNode Read(ref Utf8JsonReader reader, byte[] bytes, string name)
    {
        var start = (int)reader.TokenStartIndex;
        var items = ImmutableArray.CreateBuilder<ShapeNode>();
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
                while (reader.Read() && reader.TokenType != JsonTokenType.EndObject)
                {
                    var key = reader.GetString()!;
                    reader.Read();
                    items.Add(Read(ref reader, bytes, key));
                }
                return new(name, NodeKind.Thing, start, (int)reader.BytesConsumed - start, "", items.ToImmutable());
            case JsonTokenType.StartArray:
                while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                {
                    var item = Read(ref reader, bytes, $"{items.Count + 1}");
                    items.Add(item["name"] is { Kind: NodeKind.Value, Written.Length: > 0 } called ? item with { Name = called.Written } : item);
                }
                return new(name, NodeKind.List, start, (int)reader.BytesConsumed - start, "", items.ToImmutable());
            default:
                var length = (int)reader.BytesConsumed - start;
                var quoted = reader.TokenType == JsonTokenType.String;
                return new(name, NodeKind.Value, start, length, quoted ? reader.GetString()! : Encoding.UTF8.GetString(bytes, start, length), []) { Quoted = quoted };
        }
    }

    /// <summary>The text with this value written anew: a plain number stands as one unless words stood there, anything else goes between quotation marks.</summary>
    public string With(string text, string written)
    {
        // "12." on the way to 12.5 has to be quoted and must not stay so; a name of figures stays a name.
        var measure = !Quoted || Written is "" or ['-' or '.' or (>= '0' and <= '9'), ..] && Name is not ("name" or "title");
        var plain = Flag is not null ? written is "true" or "false" : measure && IsNumber(written);
        return Spliced(text, Start, Length, plain ? written.Trim() : Quote(written));
    }

    /// <summary>The text with one more value in this thing, at its end.</summary>
    public string WithValue(string text, string key, string written)
    {
        var before = Items.Length == 0 ? " " : ", ";
        var at = Items.Length == 0 ? Start + 1 : Items[^1].Start + Items[^1].Length;
        return Spliced(text, at, 0, $"{before}{Quote(key)}: {(IsNumber(written) ? written.Trim() : Quote(written))}");
    }

    static string Quote(string words) => $"\"{JsonEncodedText.Encode(words, JavaScriptEncoder.UnsafeRelaxedJsonEscaping)}\"";

    /// <summary>The text with one of this list's items once more after itself.</summary>
    public string WithCopy(string text, int item)
    {
        var (bytes, copied) = (Encoding.UTF8.GetBytes(text), Items[item]);
        var end = copied.Start + copied.Length;
        // What stood before it, a new line and its indent as a rule, stands before the copy too.
        var before = item > 0 ? Items[item - 1].Start + Items[item - 1].Length : Start + 1;
        var gap = Encoding.UTF8.GetString(bytes, before, copied.Start - before).TrimStart(',');
        return Spliced(text, end, 0, "," + (gap.Length > 0 ? gap : " ") + Encoding.UTF8.GetString(bytes, copied.Start, copied.Length));
    }

    /// <summary>The text without one of this list's items.</summary>
    public string Without(string text, int item)
    {
        var from = item > 0 ? Items[item - 1].Start + Items[item - 1].Length : Items[item].Start;
        var to = item > 0 || Items.Length == 1 ? Items[item].Start + Items[item].Length : Items[item + 1].Start;
        return Spliced(text, from, to - from, "");
    }

    static bool IsNumber(string written)
    {
        try
        {
            var reader = new Utf8JsonReader(Encoding.UTF8.GetBytes(written.Trim()));
            return reader.Read() && reader.TokenType == JsonTokenType.Number && !reader.Read();
        }
        catch (JsonException)
        {
            return false;
        }
    }

    static string Spliced(string text, int start, int length, string with)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        return Encoding.UTF8.GetString([.. bytes[..start], .. Encoding.UTF8.GetBytes(with), .. bytes[(start + length)..]]);
    }
}
