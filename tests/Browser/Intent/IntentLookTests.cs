using System.Diagnostics;
using System.Globalization;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Tests;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Intent;

/// <summary>What was meant, with its drawing, and how long the search takes in the page. Times are told, not asserted.</summary>
public sealed class IntentLookTests(Chromium chromium, RunningHost running, ITestOutputHelper told) : IClassFixture<Chromium>, IClassFixture<RunningHost>
{
    [Fact]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.1 A and AA; the demonstration plate's findings as docs/guide/intent.md has them")]
    public async Task The_demonstration_plate_is_drawn_as_meant()
    {
        var van = await DemoVan.Load(running.Host.Database);
        await using var visit = await chromium.Visit(running.Host.Address, $"{DemoVan.Address(van, "Dynamo mounting plate")}?sheet=intent");
        await Searched(visit);
        await Expect(visit.Page.Locator("section[aria-label='Taken'] li").First).ToContainTextAsync("H1, H2, H3, H4, H7 and H8 are of one size");
        await Expect(visit.Page.Locator("section[aria-labelledby='meant-drawing'] svg text").First).ToBeAttachedAsync();
        await LoanTests.Look(visit, "intent-plate");
        var axe = await visit.Page.RunAxe(new AxeRunOptions { RunOnly = RunOnlyOptions.Tags("wcag2a", "wcag2aa", "wcag21a", "wcag21aa") });
        Assert.Equal([], axe.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{v.Id} at {v.Nodes[0].Html}"));
        Assert.Empty(visit.Complaints);
    }

    /// <summary>Four corners, four edges and eight rows of four holes, on a grid of 20 mm.</summary>
    [Fact]
    [Truth(Grade.Property, "a search that was stopped leaves what it had found before, and says so by going on no further")]
    public async Task Forty_features_are_searched_with_progress_and_a_stop()
    {
        var bench = await Grid();
        await using var visit = await chromium.Visit(running.Host.Address, bench.Address);
        await Expect(visit.Page.Locator(".headline").First).ToContainTextAsync("The plan is true", new() { Timeout = 60_000 });
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Intent", Exact = true }).ClickAsync();
        await Searched(visit);
        var again = visit.Button("Look again");
        var times = new List<string>();
        for (var round = 0; round < 4; round++)
        {
            var watch = Stopwatch.StartNew();
            await again.ClickAsync();
            await Expect(visit.Page.Locator(".running progress[value]")).ToHaveCountAsync(1);
            await Expect(again).ToBeVisibleAsync(new() { Timeout = 120_000 });
            times.Add(watch.Elapsed.TotalSeconds.ToString("0.0", CultureInfo.InvariantCulture));
        }
        told.WriteLine($"40 features in Chromium, adjustment, search and drawing together, s: {string.Join(", ", times)}");

        var before = await visit.Page.Locator(".findings li").CountAsync();
        await again.ClickAsync();
        await visit.Button("Stop").ClickAsync();
        await Expect(again).ToBeVisibleAsync();
        await Expect(visit.Page.Locator(".findings li")).ToHaveCountAsync(before);
        Assert.True(before > 0);
        Assert.Empty(visit.Complaints);
    }

    static async Task Searched(Visit visit)
    {
        await Expect(visit.Button("Look again")).ToBeVisibleAsync(new() { Timeout = 120_000 });
        await Expect(visit.Page.Locator(".findings li").First).ToBeVisibleAsync();
    }

    async Task<Bench> Grid()
    {
        var chance = new Chance(11);
        Vec2[] corners = [new(0, 0), new(180, 0), new(180, 100), new(0, 100)];
        var holes = Enumerable.Range(0, 32).Select(i => new Vec2(20 + i % 8 * 20, 20 + i / 8 * 20)).ToList();
        var places = corners.Select((at, i) => ($"C{i + 1}", at)).Concat(holes.Select((at, i) => ($"H{i + 1}", at))).ToList();
        var bench = await Bench.Lay(running.Host.Http, "Plate of forty features",
        [
            .. places.Select(p => new SketchedFeature(p.Item1, p.Item1[0] == 'C' ? "corner" : "hole", "", "", p.at.X + 1, p.at.Y - 1, null, p.Item1[0] == 'C' ? null : 8, null)),
            .. Enumerable.Range(0, 4).Select(i => new SketchedFeature($"E{i + 1}", "edge", $"C{i + 1}", $"C{(i + 1) % 4 + 1}", null, null, null, null, null)),
        ]);
        string Read(double value) => (value + 0.02 * chance.Normal()).ToString("0.00", CultureInfo.InvariantCulture);
        ReadingEntry[] readings =
        [
            .. holes.Select((_, i) => bench.Reading($"H{i + 1}", "", Read(8.04), "diameter")),
            .. from a in Enumerable.Range(0, places.Count)
               from b in Enumerable.Range(a + 1, places.Count - a - 1)
               where places[a].at.DistanceTo(places[b].at) < 30 || (a < 4 && b < 4)
               select bench.Reading(places[a].Item1, places[b].Item1, Read(places[a].at.DistanceTo(places[b].at))),
        ];
        (await bench.Post(running.Host.Http, readings)).EnsureSuccessStatusCode();
        return bench;
    }
}
