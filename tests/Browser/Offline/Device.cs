using System.Net.Http.Json;
using System.Text.Json;
using Microsoft.Playwright;
using WitnessMark.Stores.Tags;
using WitnessMark.Web.Tests;

namespace WitnessMark.Browser.Offline;

/// <summary>What waits on a phone, written as the app hands it over, and what a host has of it.</summary>
static class Device
{
    static readonly DateTimeOffset At = new(2026, 11, 26, 8, 0, 0, TimeSpan.Zero);

    /// <summary>Notes, moves, tags, conditions, readings and a withdrawal of every fifth, in turn.</summary>
    public static (string File, IReadOnlyList<Guid> Ids) Waiting(Bench bench, string device, int count, DateTimeOffset? taken = null)
    {
        var at = taken ?? At;
        var entries = new List<object>();
        var ids = new List<Guid>();
        Guid? last = null;
        for (var i = 0; i < count; i++)
        {
            var id = Guid.CreateVersion7(At.AddMilliseconds(i));
            ids.Add(id);
            object row;
            string kind;
            switch (i % 5)
            {
                case 0: (kind, row) = ("Note", new { id, vehicleId = bench.Vehicle, partId = bench.Part, words = $"{device} {i}", at, device }); break;
                case 1: (kind, row) = ("Moved", new { id, vehicleId = bench.Vehicle, partId = bench.Part, placeId = (Guid?)null, note = $"{i}", at, device }); break;
                case 2: (kind, row) = ("TagCode", new { id, vehicleId = bench.Vehicle, code = TagSpelling.Of(id), kind = "Part", subject = bench.Part, words = "", at, device }); break;
                case 3:
                    last = id;
                    (kind, row) = ("ReadingEntry", new { id, sampleId = bench.Sample, kind = "centre distance", from = "H1", to = "H2", value = $"58.{i % 100:00}", plusMinus = "", instrument = "calliper", note = "", takenAt = at, device });
                    break;
                default: (kind, row) = ("Withdrawal", new { id, readingId = last!.Value, reason = "misread", at, device }); break;
            }
            entries.Add(new { id, kind, address = Address(kind, bench), text = JsonSerializer.Serialize(row), keptAt = At });
        }
        return (File(device, entries, []), ids);
    }

    public static string Decision(string device, string kind, Guid vehicle, Guid id, object row, int basedOn) =>
        File(device, [], [new { kind, address = $"api/vehicles/{vehicle}/desk/{kind}/{id}", text = JsonSerializer.Serialize(row), basedOn, keptAt = At, tried = Array.Empty<string>() }]);

    public static async Task TakeIn(this Visit visit, string file)
    {
        await visit.Page.Locator("#tray-file").SetInputFilesAsync(new FilePayload { Name = "waiting.json", MimeType = "application/json", Buffer = System.Text.Encoding.UTF8.GetBytes(file) });
        await visit.Page.GetByText("taken in.").WaitForAsync();
    }

    /// <summary>Ids of all that a host has of these kinds, each as often as it is there.</summary>
    public static async Task<IReadOnlyList<Guid>> Recorded(HttpClient http, Bench bench)
    {
        var ids = new List<Guid>();
        foreach (var kind in new[] { "Note", "Moved", "TagCode" })
            ids.AddRange((await http.GetFromJsonAsync<JsonElement>($"api/vehicles/{bench.Vehicle}/desk/{kind}")).EnumerateArray().Select(f => f.GetProperty("id").GetGuid()));
        var history = (await http.GetFromJsonAsync<JsonElement>($"api/samples/{bench.Sample}")).GetProperty("history");
        foreach (var part in new[] { "readings", "withdrawals" }) ids.AddRange(history.GetProperty(part).EnumerateArray().Select(f => f.GetProperty("id").GetGuid()));
        return ids;
    }

    static string Address(string kind, Bench bench) => kind switch
    {
        "ReadingEntry" => $"api/samples/{bench.Sample}/readings",
        "Withdrawal" => "api/withdrawals",
        _ => $"api/vehicles/{bench.Vehicle}/desk/{kind}",
    };

    static string File(string device, IEnumerable<object> entries, IEnumerable<object> decisions) =>
        JsonSerializer.Serialize(new { version = 1, device, entries, decisions, pictures = Array.Empty<object>() });
}
