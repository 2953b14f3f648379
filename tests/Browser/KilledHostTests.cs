using WitnessMark.Stores;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser;

/// <summary>The host dies in mid-entry: what it acknowledged is there, what waited is sent once.</summary>
public sealed class KilledHostTests(Chromium chromium)
{
    [Fact]
    public async Task A_killed_host_loses_nothing_acknowledged_and_gets_the_waiting_readings_exactly_once()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http, "Plate through a power cut", Hole("H1", 0), Hole("H2", 60));
        await using var visit = await chromium.Visit(host.Address, bench.Address);
        await visit.Page.Locator("#from").FocusAsync();
        await visit.Type("h1", "Enter", "h2", "Enter", "58.20", "Enter");
        await Expect(visit.Kept).ToHaveTextAsync("All kept");

        await host.Kill();
        await visit.Type("h1", "Enter", "h2", "Enter", "58.21", "Enter", "h1", "Enter", "h2", "Enter", "58.22", "Enter");
        await Expect(visit.Kept).ToContainTextAsync("2 kept here");
        await Expect(visit.Lines).ToHaveCountAsync(3);
        await visit.Picture("measure-host-away");

        await host.Restart();
        await Expect(visit.Kept).ToHaveTextAsync("All kept", new() { Timeout = 60_000 });
        await visit.Page.ReloadAsync();
        await Expect(visit.Lines).ToHaveCountAsync(3);
        Assert.Equal(["58.20", "58.21", "58.22"], (await bench.Standing(host.Http)).Select(r => r.Value));
    }

    [Fact]
    public async Task Waiting_readings_survive_closing_the_page()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http, "Plate left in a hurry", Hole("H1", 0), Hole("H2", 60));
        await using var visit = await chromium.Visit(host.Address, bench.Address);
        await Expect(visit.Paper).ToBeVisibleAsync();
        await host.Kill();
        await visit.Page.Locator("#from").FocusAsync();
        await visit.Type("h1", "Enter", "h2", "Enter", "58.30", "Enter");
        await Expect(visit.Lines).ToHaveCountAsync(1);
        await visit.Page.GotoAsync("about:blank");
        await host.Restart();
        await visit.Go(bench.Address);
        await Expect(visit.Lines).ToHaveCountAsync(1);
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        Assert.Equal("58.30", (await bench.Standing(host.Http)).Single().Value);
    }

    [Fact]
    public async Task A_reading_acknowledged_while_the_sample_is_on_its_way_is_shown()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http, "Plate fetched meanwhile", Hole("H1", 0), Hole("H2", 60));
        await using var visit = await chromium.Visit(host.Address, bench.Address);
        await Expect(visit.Paper).ToBeVisibleAsync();
        await host.Kill();
        await visit.Page.Locator("#from").FocusAsync();
        await visit.Type("h1", "Enter", "h2", "Enter", "58.30", "Enter");
        await Expect(visit.Lines).ToHaveCountAsync(1);
        await visit.Page.GotoAsync("about:blank");
        await host.Restart();

        // The file is read before the reading is recorded, and reaches the page after.
        var read = new TaskCompletionSource();
        var recorded = visit.Page.WaitForResponseAsync("**/readings");
        await visit.Page.RouteAsync("**/readings", async route => { await read.Task; await route.ContinueAsync(); });
        await visit.Page.RouteAsync("**/api/samples/*", async route =>
        {
            var file = await route.FetchAsync();
            read.TrySetResult();
            await recorded;
            await Task.Delay(500);
            await route.FulfillAsync(new() { Response = file });
        });
        await visit.Go(bench.Address);
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        await Expect(visit.Lines).ToHaveCountAsync(1);
    }

    static SketchedFeature Hole(string id, double x) => new(id, "hole", "", "", x, 0, null, null, null);
}
