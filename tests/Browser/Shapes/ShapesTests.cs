using System.Globalization;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using WitnessMark.FrontOffice.MakeShape;
using WitnessMark.Tests;
using WitnessMark.Web.Tests;
using static System.FormattableString;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Shapes;

/// <summary>Shapes made in the page: typed, dragged, kept, laid on sheets.</summary>
public sealed class ShapesTests(Chromium chromium, RunningHost running, ITestOutputHelper told) : IClassFixture<RunningHost>
{
    async Task<string> Path()
    {
        var plate = DemoVan.Address(await DemoVan.Load(running.Host.Database), "Rear lamp bracket");
        return $"{plate[..plate.IndexOf("/sample", StringComparison.Ordinal)]}/shapes";
    }

    static async Task Add(Visit visit, string kind)
    {
        await visit.Page.Locator("#shape-kind").SelectOptionAsync(kind);
        await visit.Button("Add a shape").ClickAsync();
        await Expect(visit.Page.Locator(".running")).ToHaveCountAsync(0, new() { Timeout = 30_000 });
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.1 A and AA; Chromium's content-policy enforcement")]
    public async Task Every_kind_is_shown_legibly_by_day_and_night_and_on_a_phone()
    {
        var path = await Path();
        foreach (var (name, width, scheme) in new[] { ("desktop-light", 1360, ColorScheme.Light), ("desktop-dark", 1360, ColorScheme.Dark), ("phone-light", 360, ColorScheme.Light) })
        {
            await using var visit = await chromium.Visit(running.Host.Address, path, width, 860, scheme);
            foreach (var kind in name == "desktop-light" ? ShapeKind.All.Select(k => k.Key) : ["rail"])
            {
                await Add(visit, kind);
                await Expect(visit.Page.Locator("#make-ready")).ToBeVisibleAsync(new() { Timeout = 30_000 });
                await visit.Page.WaitForTimeoutAsync(150);
                await visit.Picture($"shapes-{kind}-{name}");
                await visit.Page.EvaluateAsync("document.querySelector('.shape-seen').scrollIntoView()");
                await visit.Picture($"shapes-{kind}-{name}-seen");
                Assert.Equal((kind, name, 0), (kind, name, await visit.Page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - innerWidth)")));
                Assert.Equal(0, await visit.Page.Locator(".refusal").CountAsync());
            }
            var axe = await visit.Page.RunAxe(new AxeRunOptions { RunOnly = RunOnlyOptions.Tags("wcag2a", "wcag2aa", "wcag21a", "wcag21aa") });
            Assert.Equal([], axe.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{name}: {v.Id} at {v.Nodes[0].Html}"));
            Assert.Empty(visit.Complaints);
        }
    }

    [Fact]
    [Truth(Grade.Property, "a field, the text and the picture tell one shape; undo goes back; nothing kept is lost by loading again")]
    public async Task A_field_rewrites_the_text_and_all_is_kept()
    {
        await using var visit = await chromium.Visit(running.Host.Address, await Path(), 1360, 860);
        await Add(visit, "folded");
        var page = visit.Page;
        await page.GetByLabel("thickness", new() { Exact = true }).FillAsync("2");
        await page.Locator("summary:has-text('As typed')").ClickAsync();
        await Expect(page.Locator("#shape-text")).ToHaveValueAsync(new System.Text.RegularExpressions.Regex("\"thickness\": 2,"));
        // What is typed without a breath between is one step back.
        await page.WaitForTimeoutAsync(1000);
        await page.Locator("#shape-text").FillAsync("{ \"title\": ");
        await Expect(page.Locator("#shape-why")).ToContainTextAsync("not complete JSON");
        await visit.Button("Undo").ClickAsync();
        await Expect(page.Locator("#shape-text")).ToHaveValueAsync(new System.Text.RegularExpressions.Regex("\"thickness\": 2,"));
        await Expect(page.Locator("#shape-why")).ToHaveCountAsync(0);
        await Expect(page.Locator(".bench span[role=status]").First).ToHaveTextAsync("Kept", new() { Timeout = 10_000 });
        // Other shapes of the part may stand before it.
        var called = await page.Locator("#shape-name").InputValueAsync();
        await page.ReloadAsync();
        await page.GetByLabel("Shapes of this part").GetByRole(AriaRole.Button, new() { Name = called, Exact = true }).ClickAsync();
        await page.Locator("summary:has-text('As typed')").ClickAsync();
        await Expect(page.Locator("#shape-text")).ToHaveValueAsync(new System.Text.RegularExpressions.Regex("\"thickness\": 2,"));
    }

    [Fact]
    [Truth(Grade.Property, "the card that is put on the list is the one shown; the bundle holds the drawings and the card")]
    public async Task A_shape_is_laid_on_sheets_and_its_card_listed()
    {
        await using var visit = await chromium.Visit(running.Host.Address, await Path(), 1360, 860);
        await Add(visit, "folded");
        await visit.Button("Lay it on sheets and write the card").ClickAsync();
        await Expect(visit.Page.Locator("text=no laying needs less")).ToBeVisibleAsync(new() { Timeout = 30_000 });
        var download = await visit.Page.RunAndWaitForDownloadAsync(() => visit.Button("All files, ZIP").ClickAsync());
        using var zip = System.IO.Compression.ZipFile.OpenRead(await download.PathAsync());
        Assert.Contains(zip.Entries, e => e.Name.EndsWith("-card.pdf", StringComparison.Ordinal));
        Assert.Contains(zip.Entries, e => e.Name.EndsWith("-template.pdf", StringComparison.Ordinal));
        await visit.Button("Put it on the list of jobs").ClickAsync();
        await Expect(visit.Button("On the list")).ToBeVisibleAsync();
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    [Truth(Grade.Property, "another way to make a flange gives another kit; the fine mesh bears the blank out")]
    public async Task A_rail_is_made_another_way_and_held_against_a_mesh()
    {
        await using var visit = await chromium.Visit(running.Host.Address, await Path(), 1360, 860);
        await Add(visit, "rail");
        var views = visit.Page.Locator(".shape-seen figcaption");
        await Expect(visit.Page.Locator("#make-ready")).ToBeVisibleAsync(new() { Timeout = 30_000 });
        var before = await views.AllInnerTextsAsync();
        var choice = visit.Page.Locator("#shape-choice");
        await choice.SelectOptionAsync("4");
        await Expect(views).Not.ToHaveTextAsync(before, new() { Timeout = 30_000 });
        await choice.SelectOptionAsync("1");
        await Expect(views).ToHaveTextAsync(before, new() { Timeout = 30_000 });
        await visit.Button("Check against a fine mesh").ClickAsync();
        await Expect(visit.Page.Locator("text=of a fine mesh laid flat").First).ToBeVisibleAsync(new() { Timeout = 60_000 });
        Assert.Empty(visit.Complaints);
    }

    /// <summary>A rail of twelve stations with forty holes, one value changed over and over. Measured and told, not asserted: the machine may be busy.</summary>
    [Fact]
    [Truth(Grade.Property, "every change of a value is worked out and shown")]
    public async Task A_long_rail_follows_a_dragged_value()
    {
        await using var visit = await chromium.Visit(running.Host.Address, await Path(), 1360, 860);
        await Add(visit, "rail");
        await visit.Page.Locator("summary:has-text('As typed')").ClickAsync();
        await visit.Page.Locator("#shape-text").FillAsync(LongRail());
        var shown = visit.Page.Locator("[data-run]");
        var times = new List<string>();
        for (var i = 0; i < 20; i++)
        {
            var drawn = i % 5 == 4;
            if (drawn) await visit.Page.WaitForTimeoutAsync(1500);
            var felt = await visit.Page.EvaluateAsync<double>(Drag, $"{90 + i}");
            times.Add(Invariant($"{felt:0} ({await shown.GetAttributeAsync("data-worked")}{(drawn ? $", solids {await shown.GetAttributeAsync("data-drawn")}" : "")})"));
        }
        told.WriteLine($"a rail of 12 stations and 40 holes in Chromium, from a change to its new figures, ms (worked): {string.Join("  ", times)}");
        await Expect(shown.Locator("[aria-label]").First).ToBeVisibleAsync();
        Assert.Equal(0, await visit.Page.Locator("#shape-why").CountAsync());
    }

    /// <summary>Changes the first station's web and waits for the next figures, ms.</summary>
    const string Drag = """
        async value => {
          const field = document.querySelector('#shape-0-0-1'), shown = document.querySelector('[data-run]'), run = shown.dataset.run, from = performance.now();
          field.value = value;
          field.dispatchEvent(new Event('input', { bubbles: true }));
          while (shown.dataset.run === run && performance.now() - from < 20000) await new Promise(next => requestAnimationFrame(next));
          return performance.now() - from;
        }
        """;

    static string LongRail()
    {
        var stations = Enumerable.Range(0, 12).Select(k => string.Create(CultureInfo.InvariantCulture, $"    {{ \"at\": {150 * k}, \"web\": {80 + k % 3}, \"lower\": 34, \"upper\": 34{(k is > 1 and < 10 ? $", \"level\": {8 * (k - 1)}, \"ease\": 400" : "")} }}"));
        var holes = Enumerable.Range(0, 40).Select(k => string.Create(CultureInfo.InvariantCulture, $"    {{ \"name\": \"H{k + 1}\", \"face\": \"web\", \"at\": {25 + 40 * k}, \"from\": \"middle\", \"across\": {k % 2 * 10}, \"diameter\": 8.5 }}"));
        return $"{{\n  \"title\": \"Long rail\",\n  \"kind\": \"C\",\n  \"hand\": \"LH\",\n  \"thickness\": 1.6,\n  \"inside_radius\": 2.5,\n  \"stations\": [\n{string.Join(",\n", stations)}\n  ],\n  \"holes\": [\n{string.Join(",\n", holes)}\n  ]\n}}\n";
    }
}
