using System.Net.Http.Json;
using System.Text.Json;
using WitnessMark.Stores;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Offline;

/// <summary>The out-tray in a real browser: its database, what a full one says, what is taken over, and two savings side by side.</summary>
public sealed class TrayTests(Chromium chromium, RunningHost running) : IClassFixture<RunningHost>
{
    const string NoRoom = """
        const put = IDBObjectStore.prototype.put;
        IDBObjectStore.prototype.put = function (...row) {
          if (globalThis.noRoom) throw new DOMException("full", "QuotaExceededError");
          return put.apply(this, row);
        };
        """;

    HostProcess Host => running.Host;

    [Fact]
    public async Task A_full_device_says_so_and_what_was_typed_still_stands()
    {
        var bench = await Bench.Lay(Host.Http, "Plate on a full phone", Hole("H1", 0), Hole("H2", 60));
        await using var visit = await chromium.Visit(Host.Address, bench.Address, 360, 740, before: NoRoom);
        await Expect(visit.Paper).ToBeVisibleAsync();
        await visit.Page.EvaluateAsync("globalThis.noRoom = true");
        await visit.Browser.SetOfflineAsync(true);
        await visit.Page.Locator("#from").FocusAsync();
        await visit.Type("h1", "Enter", "h2", "Enter", "58.20", "Enter");
        await Expect(visit.Page.Locator("#refusal .refusal")).ToContainTextAsync("no room");
        await Expect(visit.Page.Locator("#value")).ToHaveValueAsync("58.20");
        await Expect(visit.Lines).ToHaveCountAsync(0);
        await visit.Whole("offline-no-room");
        await visit.Page.EvaluateAsync("globalThis.noRoom = false");
        await visit.Page.Locator("#value").PressAsync("Enter");
        await Expect(visit.Lines).ToHaveCountAsync(1);
        await visit.Browser.SetOfflineAsync(false);
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        Assert.Equal("58.20", (await bench.Standing(Host.Http)).Single().Value);
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task A_browser_without_a_database_says_so_and_still_writes_through_to_the_host()
    {
        var bench = await Bench.Lay(Host.Http, "Plate in a private window", Hole("H1", 0), Hole("H2", 60));
        await using var visit = await chromium.Visit(Host.Address, bench.Address, before: "Object.defineProperty(globalThis, 'indexedDB', { value: undefined });");
        await visit.Page.Locator("#from").FocusAsync();
        await visit.Type("h1", "Enter", "h2", "Enter", "58.20", "Enter");
        await Expect(visit.Lines).ToHaveCountAsync(1);
        Assert.Equal("58.20", (await bench.Standing(Host.Http)).Single().Value);
        await visit.Browser.SetOfflineAsync(true);
        await visit.Type("h1", "Enter", "h2", "Enter", "58.30", "Enter");
        await Expect(visit.Page.Locator("#refusal .refusal")).ToContainTextAsync("private window");
        await Expect(visit.Page.Locator("#value")).ToHaveValueAsync("58.30");
        await Expect(visit.Lines).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task What_an_earlier_version_left_in_local_storage_is_taken_over_once()
    {
        var bench = await Bench.Lay(Host.Http, "Plate from before", Hole("H1", 0), Hole("H2", 60));
        var reading = bench.Reading("H1", "H2", "58.44");
        var text = JsonSerializer.Serialize(JsonSerializer.Serialize(new { reading, withdrawal = (object?)null }, JsonSerializerOptions.Web));
        var sketch = JsonSerializer.Serialize(JsonSerializer.Serialize(new { row = new { id = bench.Sample, features = new[] { Hole("H1", 0), Hole("H2", 61), Hole("H3", 5) } }, basedOn = 1 }, JsonSerializerOptions.Web));
        await using var visit = await chromium.Visit(Host.Address, "waiting", before:
            $"if (!sessionStorage.set) {{ localStorage['wm.unsent.{reading.Id:N}'] = {text}; localStorage['wm.sketch.{bench.Sample:N}'] = {sketch}; sessionStorage.set = 1; }}");
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        Assert.Equal(reading.Id, (await bench.Standing(Host.Http)).Single().Id);
        await visit.Go(bench.Address);
        await Expect(visit.Page.GetByLabel("Condition of H3", new() { Exact = true })).ToBeVisibleAsync();
        Assert.Equal("0", await visit.Page.EvaluateAsync<string>("String(Object.keys(localStorage).filter(k => /^wm.(unsent|sketch)/.test(k)).length)"));
        Assert.Empty(visit.Complaints);
    }

    [Theory]
    [InlineData("Keep mine", "chrome")]
    [InlineData("Take theirs", "nickel")]
    public async Task Two_savings_of_one_row_stand_side_by_side_until_somebody_chooses(string choice, string left)
    {
        var bench = await Bench.Lay(Host.Http);
        var id = Guid.NewGuid();
        object Firm(string does) => new { id, vehicleId = bench.Vehicle, name = "Hartle platers", does, contact = "yard gate", notes = "" };
        using (var first = await Host.Http.PutAsJsonAsync($"api/vehicles/{bench.Vehicle}/desk/Firm/{id}", new { row = Firm("zinc"), basedOn = 0 })) first.EnsureSuccessStatusCode();
        await using var visit = await chromium.Visit(Host.Address, "waiting", 360, 740);
        await visit.Browser.SetOfflineAsync(true);
        await visit.TakeIn(Device.Decision("phone", "Firm", bench.Vehicle, id, Firm("chrome"), 1));
        using (var theirs = await Host.Http.PutAsJsonAsync($"api/vehicles/{bench.Vehicle}/desk/Firm/{id}", new { row = Firm("nickel"), basedOn = 1 })) theirs.EnsureSuccessStatusCode();
        await visit.Browser.SetOfflineAsync(false);
        await Expect(visit.Kept).ToHaveTextAsync("1 needs you");
        await Expect(visit.Page.Locator(".clash tbody tr")).ToHaveCountAsync(1);
        await Expect(visit.Page.Locator(".clash .mine")).ToHaveTextAsync("chrome");
        await Expect(visit.Page.Locator(".clash .theirs")).ToHaveTextAsync("nickel");
        await visit.Look("offline-clash");
        await visit.Page.ReloadAsync();
        await visit.Button(choice).ClickAsync();
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        var standing = (await Host.Http.GetFromJsonAsync<JsonElement>($"api/vehicles/{bench.Vehicle}/desk/Firm")).EnumerateArray().Single().GetProperty("row");
        Assert.Equal(left, standing.GetProperty("does").GetString());
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task A_refused_entry_is_shown_set_right_and_sent_again()
    {
        var bench = await Bench.Lay(Host.Http);
        var (file, _) = Device.Waiting(bench, "phone", 1, new(2426, 11, 26, 8, 0, 0, TimeSpan.Zero));
        await using var visit = await chromium.Visit(Host.Address, "waiting");
        // A clock that ran years ahead: the host refuses it, the phone keeps it.
        await visit.TakeIn(file);
        await Expect(visit.Kept).ToHaveTextAsync("1 needs you");
        await Expect(visit.Page.Locator(".refusal").First).ToContainTextAsync("2426");
        await visit.Whole("offline-refused");
        var at = visit.Page.GetByLabel("At", new() { Exact = true });
        await at.FillAsync("2026-11-26T08:00:00+00:00");
        await at.BlurAsync();
        await visit.Button("Send it again").ClickAsync();
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        Assert.Single(await Device.Recorded(Host.Http, bench));
    }

    [Fact]
    public async Task Half_a_reading_is_there_again_after_the_back_button()
    {
        var bench = await Bench.Lay(Host.Http, "Plate and the back button", Hole("H1", 0), Hole("H2", 60));
        await using var visit = await chromium.Visit(Host.Address, bench.Address);
        await visit.Page.Locator("#from").FocusAsync();
        await visit.Type("h1", "Enter", "h2", "Enter", "58.2");
        await visit.Page.GotoAsync("about:blank");
        await visit.Page.GoBackAsync();
        await Expect(visit.Page.Locator("#value")).ToHaveValueAsync("58.2");
        await Expect(visit.Page.Locator("#from")).ToHaveValueAsync("H1");
    }

    static SketchedFeature Hole(string id, double x) => new(id, "hole", "", "", x, 0, null, null, null);
}
