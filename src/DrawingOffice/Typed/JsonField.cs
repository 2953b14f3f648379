using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using WitnessMark.Maths;
using WitnessMark.Maths.Units;

namespace WitnessMark.DrawingOffice.Typed;

/// <summary>One place in a typed file, with its name for refusals. Every failing is a <see cref="RefusedException"/>.</summary>
public sealed class JsonField(string name, JsonElement element, Func<string, Parsed<double>>? length)
{
    public JsonField this[string key] => TryGet(key, out var e) ? new($"{name}, {key}", e, length) : throw new RefusedException(Refusal.Of($"{name}, {key}", null, "this is needed"));

    public bool Has(string key) => TryGet(key, out _);

    bool TryGet(string key, out JsonElement e)
    {
        if (element.ValueKind != JsonValueKind.Object) throw Wrong("write it between { and }");
        return element.TryGetProperty(key, out e);
    }

    public void Only(params ReadOnlySpan<string> known)
    {
        if (element.ValueKind != JsonValueKind.Object) throw Wrong("write it between { and }");
        foreach (var p in element.EnumerateObject())
            if (!known.Contains(p.Name)) throw new RefusedException(Refusal.Of(name, p.Name, $"known here: {string.Join(", ", known!)}"));
    }

    public RefusedException Wrong(string wanted) => new(Refusal.Of(name, element.GetRawText(), wanted));

    public string Text(string key, string? otherwise = null)
    {
        if (otherwise is not null && !Has(key)) return otherwise;
        var field = this[key];
        var text = field.AsText() ?? throw field.Wrong("write a text between quotation marks");
        // Signs that steer a terminal or turn the reading round are no part of a name.
        return text.Any(c => char.IsControl(c) || char.GetUnicodeCategory(c) == UnicodeCategory.Format) ? throw field.Wrong("leave out the signs that are not to be seen") : text;
    }

    string? AsText() => element.ValueKind == JsonValueKind.String ? element.GetString() : null;

    public ImmutableArray<T> List<T>(string key, Func<JsonField, T> read) => this[key].Items(read);

    ImmutableArray<T> Items<T>(Func<JsonField, T> read)
    {
        if (element.ValueKind != JsonValueKind.Array) throw Wrong("write a list between [ and ]");
        return [.. element.EnumerateArray().Select((e, i) => read(new($"{name} {Called(e, i)}", e, length)))];
    }

    // A named thing is called by its name, the others by their place.
    static string Called(JsonElement e, int i) =>
        e.ValueKind == JsonValueKind.Object && e.TryGetProperty("name", out var n) && n.ValueKind == JsonValueKind.String ? n.GetString()! : $"{i + 1}";

    /// <summary>Radians: a number in degrees, or a written angle such as 5° 30'.</summary>
    public double Angle()
    {
        if (AsText() is not { } text) return Number() * Math.PI / 180;
        var parsed = Angles.Read(text, field: name);
        return parsed.Ok ? parsed.Value.Radians : throw new RefusedException(parsed.Refusal!);
    }

    /// <summary>Longest length read, mm: more than anything in a shed, and no picture or search of it runs away.</summary>
    public const double Longest = 100_000;

    /// <summary>mm, either sign, up to <see cref="Longest"/>.</summary>
    public double Length() => Math.Abs(Read()) <= Longest ? Read() : throw Wrong($"write at most {Longest / 1000:0} m");

    double Read()
    {
        if (AsText() is not { } text) return Number();
        if (length is null) throw Wrong("write a number in mm");
        var parsed = length(text);
        return parsed.Ok ? parsed.Value : throw new RefusedException(new($"{name}, {parsed.Refusal!.Sentence}"));
    }

    public double Positive() => Length() is var v && v > 0 ? v : throw Wrong("it must be more than 0");

    public double Number() => element.ValueKind == JsonValueKind.Number && element.TryGetDouble(out var v) && double.IsFinite(v) ? v : throw Wrong("write a number");

    public bool Flag() => element.ValueKind is JsonValueKind.True or JsonValueKind.False ? element.GetBoolean() : throw Wrong("write true or false");

    /// <summary>One of a few words.</summary>
    public T Word<T>(params ReadOnlySpan<(string Word, T Meaning)> known)
    {
        foreach (var (word, meaning) in known)
            if (string.Equals(AsText(), word, StringComparison.OrdinalIgnoreCase)) return meaning;
        var words = new List<string>();
        foreach (var (word, _) in known) words.Add(word);
        throw Wrong($"write {string.Join(", ", words)}");
    }

    public int Whole() => element.ValueKind == JsonValueKind.Number && element.TryGetInt32(out var v) ? v : throw Wrong("write a whole number");

    public ImmutableArray<double> Lengths() => Items(f => f.Length());

    public (double, double) Pair() => Lengths() is [var a, var b] ? (a, b) : throw Wrong("write two lengths between [ and ]");
}
