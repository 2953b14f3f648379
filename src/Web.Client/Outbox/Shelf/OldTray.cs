using System.Text.Json;
using WitnessMark.Stores;
using WitnessMark.Stores.Intentions;
using WitnessMark.Stores.Photographs;
using WitnessMark.Stores.Shapes;
using WitnessMark.Web.Client.Shell;

namespace WitnessMark.Web.Client.Outbox.Shelf;

/// <summary>What an earlier version of the app left in localStorage: taken over once, and let go there only when it lies in the database.</summary>
static class OldTray
{
    const string Entries = "wm.unsent.";

    static readonly (string Prefix, string Kind)[] Decisions =
    [
        ("wm.sketch.", nameof(SampleSketch)), ("wm.folded.", nameof(FoldedPart)), ("wm.photo.", nameof(SamplePhotograph)),
        ("wm.shape.", nameof(TypedShape)), ("wm.solid.", nameof(TypedShape)), ("wm.intent.", nameof(IntentChoices)),
    ];

    public static async Task TakeOver(PageScript page, Tray tray)
    {
        foreach (var key in page.KeysUnder(Entries))
            if (page.Kept(key) is { } text && await Entry(text, tray)) page.Forget(key);
        foreach (var (prefix, kind) in Decisions)
            foreach (var key in page.KeysUnder(prefix))
                if (page.Kept(key) is { } text && await Decision(kind, text, tray)) page.Forget(key);
    }

    static async Task<bool> Entry(string text, Tray tray)
    {
        using var entry = Parse(text);
        if (entry is null) return false;
        return Part(entry, "reading") is { } reading && Spelling.Read<ReadingEntry>(reading) is { } r ? await tray.Append(r) is null
            : Part(entry, "withdrawal") is { } withdrawal && Spelling.Read<Withdrawal>(withdrawal) is { } w && await tray.Append(w) is null;
    }

    static async Task<bool> Decision(string kind, string text, Tray tray)
    {
        using var saving = Parse(text);
        if (saving is null || Part(saving, "row") is not { } row) return false;
        using var read = JsonDocument.Parse(row);
        if (!read.RootElement.TryGetProperty("id", out var named) || !named.TryGetGuid(out var id)) return false;
        var vehicle = read.RootElement.TryGetProperty("vehicleId", out var v) && v.TryGetGuid(out var own) ? own : Guid.Empty;
        var address = kind switch
        {
            nameof(SampleSketch) => Kinds.Sketch(id),
            nameof(FoldedPart) => Kinds.Folded(id),
            _ => Kinds.Desk(kind, vehicle, id),
        };
        var basedOn = saving.RootElement.TryGetProperty("basedOn", out var version) && version.TryGetInt32(out var n) ? n : 0;
        // One that waits in the database is the newer.
        return tray.Lying.Decisions.ContainsKey(address) || await tray.Decide(kind, address, row, basedOn, quiet: true) is null;
    }

    static JsonDocument? Parse(string text)
    {
        try
        {
            return JsonDocument.Parse(text) is { RootElement.ValueKind: JsonValueKind.Object } whole ? whole : null;
        }
        catch (JsonException)
        {
            return null;
        }
    }

    static string? Part(JsonDocument whole, string name) =>
        whole.RootElement.TryGetProperty(name, out var part) && part.ValueKind == JsonValueKind.Object ? part.GetRawText() : null;
}
