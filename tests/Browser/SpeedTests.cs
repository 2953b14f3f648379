using System.Globalization;
using WitnessMark.Maths;
using WitnessMark.Stores;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser;

/// <summary>How long the adjustment takes in the page after warm-up. Measured and told, not asserted: the machine may be busy.</summary>
public sealed class SpeedTests(Chromium chromium, RunningHost running, ITestOutputHelper told) : IClassFixture<RunningHost>
{
    const int Rounds = 8;

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
