using System.Text.Json;
using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Futures;

/// <summary>
/// Reads an activity network in JSON: <c>activities</c>, each with <c>id</c>, <c>predecessors</c> and <c>duration</c> of
/// <c>type</c> lognormal (mean, sd), pert_beta (low, mode, high), gamma (shape, scale) or exponential (mean). Other fields are
/// passed over.
/// </summary>
public static class NetworkFile
{
    /// <summary>Largest number read, and its inverse the smallest, so that no square of a sum leaves the range of a double.</summary>
    const double Largest = 1e15;

    static ReadOnlySpan<byte> Mark => [0xEF, 0xBB, 0xBF];

    /// <param name="json">UTF-8, with or without its byte order mark.</param>
    public static Parsed<Network> Read(ReadOnlyMemory<byte> json)
    {
        try
        {
            using var document = JsonDocument.Parse(json.Span.StartsWith(Mark) ? json[Mark.Length..] : json);
            var root = document.RootElement;
            if (root.ValueKind != JsonValueKind.Object || !root.TryGetProperty("activities", out var list) || list.ValueKind != JsonValueKind.Array)
                return Refusal.Of("activities", null, "the file needs a list of them");
            return Network.Of([.. list.EnumerateArray().Select((a, i) => Activity(a, $"activity {i + 1}"))]);
        }
        catch (JsonException broken)
        {
            return new Refusal($"line {broken.LineNumber + 1}, column {broken.BytePositionInLine + 1}: this is not JSON; look for a missing comma, quote or bracket.");
        }
        catch (RefusedException refused)
        {
            return refused.Refusal;
        }
    }

    static Activity Activity(JsonElement a, string which)
    {
        var id = Text(Of(a, "id", which), which, "id");
        if (id.Length == 0) throw Refused(which, "id", null, "give it a name");
        which = $"activity {id}";
        var before = Of(a, "predecessors", which);
        if (before.ValueKind != JsonValueKind.Array) throw Refused(which, "predecessors", before.ToString(), "give a list of ids; it may be empty");
        return new(id, [.. before.EnumerateArray().Select(p => Text(p, which, "predecessor"))], Duration(Of(a, "duration", which), which));
    }

    static Duration Duration(JsonElement d, string which)
    {
        double Number(string field) => Of(d, field, which) is { ValueKind: JsonValueKind.Number } x && x.TryGetDouble(out var value) && Math.Abs(value) is 0 or (>= 1 / Largest and <= Largest)
            ? value : throw Refused(which, field, Of(d, field, which).ToString(), "give a number, no larger than 1e15 and, save 0, no smaller than 1e-15");
        return Text(Of(d, "type", which), which, "type") switch
        {
            "lognormal" => new Lognormal(Number("mean"), Number("sd")),
            "pert_beta" => new PertBeta(Number("low"), Number("mode"), Number("high")),
            "gamma" => new Gamma(Number("shape"), Number("scale")),
            "exponential" => new Exponential(Number("mean")),
            var other => throw Refused(which, "type", other, "give lognormal, pert_beta, gamma or exponential"),
        };
    }

    static JsonElement Of(JsonElement of, string field, string which) =>
        of.ValueKind == JsonValueKind.Object && of.TryGetProperty(field, out var found) ? found : throw Refused(which, field, null, "it is needed");

    static string Text(JsonElement x, string which, string field) =>
        x.ValueKind == JsonValueKind.String ? x.GetString()! : throw Refused(which, field, x.ToString(), "give it in quotes");

    static RefusedException Refused(string which, string field, string? value, string wanted) => new(Refusal.Of(field, value, wanted).In(which));
}
