using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser;

/// <summary>
/// How long the app takes to open, and the adjustment in the page after warm-up. Measured and told, not asserted: the machine may be busy.
/// Opening is quicker by a published host (Release) than by a Debug build.
/// </summary>
public sealed class SpeedTests(Chromium chromium, RunningHost running, ITestOutputHelper told) : IClassFixture<RunningHost>
{
    const int Rounds = 8, Openings = 5;

    /// <summary>Notes when the first heading stood in the page, ms after the browser was sent there.</summary>
    const string Watch = "new MutationObserver(() => { if (!window.opened && document.querySelector('h1')) window.opened = performance.now(); }).observe(document, { childList: true, subtree: true });";

    [Fact]
    public async Task The_app_opens_for_the_first_time_again_and_with_no_network()
    {
        var (first, again, away) = (new List<double>(), new List<double>(), new List<double>());
        for (var i = 0; i < Openings; i++)
        {
            await using var visit = await chromium.Visit(running.Host.Address, "", before: Watch);
            first.Add(await Opened(visit));
            await visit.Go("");
            again.Add(await Opened(visit));
        }
        await using var kept = await chromium.Visit(running.Host.Address, "", worker: true, before: Watch);
        await kept.Page.WaitForFunctionAsync("async () => { await navigator.serviceWorker.ready; return !!navigator.serviceWorker.controller; }", null, new() { Timeout = 180_000 });
        await kept.Browser.SetOfflineAsync(true);
        for (var i = 0; i < Openings; i++)
        {
            await kept.Go("");
            away.Add(await Opened(kept));
        }
        foreach (var (what, times) in new[] { ("the first time", first), ("again", again), ("again with no network", away) })
            told.WriteLine($"Opened {what}, to the heading: median {times.Order().ElementAt(Openings / 2):0} ms; in order {string.Join(" ", times.Select(t => t.ToString("0", CultureInfo.InvariantCulture)))}");
        Assert.All(away, t => Assert.True(t > 0));
    }

    [Theory]
    [InlineData(30)]
    [InlineData(100)]
    public async Task A_survey_is_adjusted_in_the_page(int points)
    {
        var bench = await Grid(points);
        await using var visit = await chromium.Visit(running.Host.Address, bench.Address);
        await Expect(visit.Page.Locator(".headline")).ToContainTextAsync("The plan is true", new() { Timeout = 60_000 });
        var times = new List<double>();
        for (var i = 0; i < Rounds; i++)
        {
            var lines = await visit.Lines.CountAsync();
            await visit.Page.Locator("#from").FocusAsync();
            await visit.Type("c1", "Enter", "c2", "Enter", "20.00", "Enter");
            await Expect(visit.Lines).ToHaveCountAsync(lines + 1, new() { Timeout = 60_000 });
            times.Add(double.Parse((await visit.Page.Locator("[data-solve-ms]").GetAttributeAsync("data-solve-ms"))!, CultureInfo.InvariantCulture));
        }
        var warm = times.Skip(Rounds / 2).Order().ToList();
        told.WriteLine($"{points} points in Chromium, warm: median {warm[warm.Count / 2]:0.0} ms, least {warm[0]:0.0} ms; in order {string.Join(" ", times.Select(t => t.ToString("0.0", CultureInfo.InvariantCulture)))}");
        Assert.All(times, t => Assert.True(t > 0));
    }

    static Task<double> Opened(Visit visit) => visit.Page.EvaluateAsync<double>("window.opened");

    /// <summary>Corners on a 20 mm grid, each tied to its neighbours and diagonals, read with a calliper's scatter.</summary>
    async Task<Bench> Grid(int points)
    {
        var chance = new Chance(7);
        var places = Enumerable.Range(0, points).Select(i => new Vec2(i % 10 * 20, i / 10 * 20)).ToList();
        var bench = await Bench.Lay(running.Host.Http, $"Grid of {points}", [.. places.Select((p, i) => new SketchedFeature($"C{i + 1}", "corner", "", "", p.X + 1, p.Y - 1, null, null, null))]);
        var readings = from a in Enumerable.Range(0, points)
                       from b in Enumerable.Range(a + 1, points - a - 1)
                       where places[a].DistanceTo(places[b]) < 30
                       select bench.Reading($"C{a + 1}", $"C{b + 1}", (places[a].DistanceTo(places[b]) + 0.02 * chance.Normal()).ToString("0.00", CultureInfo.InvariantCulture));
        (await bench.Post(running.Host.Http, [.. readings])).EnsureSuccessStatusCode();
        return bench;
    }
}
