using System.Text.RegularExpressions;
using Microsoft.Playwright;
using WitnessMark.Stores;
using WitnessMark.Tests;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Offline;

/// <summary>Three devices, a link that comes and goes, a host that dies: everything arrives, once.</summary>
public sealed class FlappingLinkTests(Chromium chromium, ITestOutputHelper told)
{
    const int EachDevice = 167;

    [Fact]
    [Truth(Grade.Property, "what was sent is counted at the host by its ids: each once, none besides")]
    public async Task Five_hundred_entries_of_three_devices_arrive_exactly_once()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http, "Plate measured by three", Hole("H1", 0), Hole("H2", 60));
        var chance = new Random(20261126);
        var visits = new List<Visit>();
        var ids = new List<Guid>();
        foreach (var device in new[] { "phone", "tablet", "desk" })
        {
            var visit = await chromium.Visit(host.Address, "waiting");
            visits.Add(visit);
            // Of the answers that the host has given, one in three never arrives.
            await visit.Page.RouteAsync("**/api/**", async route =>
            {
                if (route.Request.Method != "POST") { await route.ContinueAsync(); return; }
                try
                {
                    var answer = await route.FetchAsync();
                    if (chance.Next(3) == 0) await route.AbortAsync();
                    else await route.FulfillAsync(new() { Response = answer });
                }
                catch (PlaywrightException)
                {
                    await route.AbortAsync();
                }
            });
            await visit.Browser.SetOfflineAsync(true);
            var (file, made) = Device.Waiting(bench, device, EachDevice);
            await visit.TakeIn(file);
            ids.AddRange(made);
            await Expect(visit.Kept).ToContainTextAsync($"{EachDevice}");
        }
        for (var turn = 0; turn < 12; turn++)
        {
            await visits[chance.Next(3)].Browser.SetOfflineAsync(chance.Next(2) == 0);
            if (turn is 4 or 8)
            {
                await host.Kill();
                await visits[turn % 3].Browser.SetOfflineAsync(false);
                await Task.Delay(400);
                await host.Restart();
            }
            await Task.Delay(chance.Next(100, 600));
        }
        foreach (var visit in visits) await visit.Browser.SetOfflineAsync(false);
        foreach (var visit in visits)
        {
            await visit.Page.Locator("body").EvaluateAsync("() => window.dispatchEvent(new Event('online'))");
            await Expect(visit.Kept).ToHaveTextAsync(new Regex("^(All kept|\\d+ needs? you)$"), new() { Timeout = 180_000 });
            Assert.Empty(await visit.Page.Locator("main .refusal").AllInnerTextsAsync());
            Assert.Empty(visit.Complaints);
            await visit.DisposeAsync();
        }
        var recorded = await Device.Recorded(host.Http, bench);
        Assert.Equal(ids.Order(), recorded.Order());
        told.WriteLine($"{recorded.Count} entries recorded of {ids.Count} made on three devices.");
    }

    [Fact]
    public async Task Two_tabs_send_what_waits_once_and_both_know()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http, "Plate in two tabs", Hole("H1", 0), Hole("H2", 60));
        await using var one = await chromium.Visit(host.Address, bench.Address);
        var other = await one.Tab(bench.Address);
        await Expect(other.Paper).ToBeVisibleAsync();
        var posts = 0;
        one.Browser.Request += (_, r) => { if (r.Method == "POST") Interlocked.Increment(ref posts); };
        await one.Browser.SetOfflineAsync(true);
        await one.Page.Locator("#from").FocusAsync();
        await one.Type("h1", "Enter", "h2", "Enter", "58.20", "Enter");
        await Expect(one.Lines).ToHaveCountAsync(1);
        await Expect(other.Kept).ToContainTextAsync("1");
        await other.Page.Locator("#from").FocusAsync();
        await other.Type("h1", "Enter", "h2", "Enter", "58.30", "Enter");
        await Expect(one.Kept).ToContainTextAsync("2 kept here");
        await one.Browser.SetOfflineAsync(false);
        await Expect(one.Kept).ToHaveTextAsync("All kept");
        await Expect(other.Kept).ToHaveTextAsync("All kept");
        Assert.Equal(["58.20", "58.30"], (await bench.Standing(host.Http)).Select(r => r.Value).Order());
        Assert.Empty(one.Complaints);
    }

    static SketchedFeature Hole(string id, double x) => new(id, "hole", "", "", x, 0, null, null, null);
}
