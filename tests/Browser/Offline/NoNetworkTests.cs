using System.Diagnostics;
using WitnessMark.Stores;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Offline;

/// <summary>After one visit the app and what was taken along open with the link cut and the host dead.</summary>
public sealed class NoNetworkTests(Chromium chromium, ITestOutputHelper told)
{
    const string IsKept = "async () => { await navigator.serviceWorker.ready; return !!navigator.serviceWorker.controller; }";

    [Fact]
    public async Task The_app_opens_and_a_survey_is_made_with_the_link_cut_and_the_host_dead()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http, "Plate in a lender's garage", Hole("H1", 0, 0), Hole("H2", 60, 0), Hole("H3", 60, 40), Hole("H4", 0, 40));
        await bench.Post(host.Http,
            bench.Reading("H1", "H2", "60.02"), bench.Reading("H2", "H3", "39.98"), bench.Reading("H3", "H4", "59.98"), bench.Reading("H4", "H1", "40.02"), bench.Reading("H1", "H3", "72.10"),
            bench.Reading("H1", "", "8.00", "diameter"), bench.Reading("H2", "", "8.01", "diameter"), bench.Reading("H3", "", "8.02", "diameter"), bench.Reading("H4", "", "8.00", "diameter"));
        await using var visit = await chromium.Visit(host.Address, "waiting", 360, 740, worker: true);
        await visit.Page.WaitForFunctionAsync(IsKept, null, new() { Timeout = 180_000 });
        await visit.Button("Take along Hartle van").ClickAsync();
        await Expect(visit.Page.GetByText("All of it lies on this device.")).ToBeVisibleAsync(new() { Timeout = 120_000 });
        await visit.Look("offline-waiting");

        await host.Kill();
        await visit.Browser.SetOfflineAsync(true);
        var began = Stopwatch.StartNew();
        await visit.Page.GotoAsync(new Uri(host.Address, bench.Address).ToString());
        await Expect(visit.Lines).ToHaveCountAsync(9);
        told.WriteLine($"Opened with no network, by a Debug build: {began.ElapsedMilliseconds} ms to the readings of a sample");
        await Expect(visit.Page.Locator(".as-of")).ToContainTextAsync("the host is away");

        await visit.Page.Locator("#from").FocusAsync();
        await visit.Type("h2", "Enter", "h4", "Enter", "72.12", "Enter");
        await Expect(visit.Lines).ToHaveCountAsync(10);
        await Expect(visit.Page.Locator(".headline.good")).ToBeVisibleAsync(new() { Timeout = 60_000 });
        // The second runtime was kept too: what was meant is worked out in it.
        await visit.Go($"{bench.Address}?sheet=intent");
        await Expect(visit.Page.Locator("section[aria-label='Taken'] li").First).ToContainTextAsync("chi-square", new() { Timeout = 120_000 });
        foreach (var path in new[] { "", $"vehicle/{bench.Vehicle}", $"vehicle/{bench.Vehicle}/part/{bench.Part}", "planning/next", "planning/hours", "shop" })
        {
            await visit.Go(path);
            await Expect(visit.Page.GetByText("Fetching")).ToHaveCountAsync(0);
        }
        await visit.Go(bench.Address);
        await Expect(visit.Lines).ToHaveCountAsync(10);
        await visit.Whole("offline-survey");

        await host.Restart();
        await visit.Browser.SetOfflineAsync(false);
        await Expect(visit.Kept).ToHaveTextAsync("All kept", new() { Timeout = 60_000 });
        Assert.Equal(10, (await bench.Standing(host.Http)).Length);
        Assert.Empty(visit.Complaints);
    }

    static SketchedFeature Hole(string id, double x, double y) => new(id, "hole", "", "", x, y, null, null, null);
}
