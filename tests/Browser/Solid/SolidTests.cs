using System.Text.RegularExpressions;
using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using WitnessMark.Tests;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Solid;

/// <summary>A bracket in space in the page: begun, adjusted, turned, added to, kept, drawn.</summary>
public sealed class SolidTests(Chromium chromium, RunningHost running) : IClassFixture<RunningHost>
{
    [Fact]
    [Truth(Grade.SecondImplementation, "the example's readings were made from a bracket bent to 105°; axe-core rules for WCAG 2.1 A and AA; nothing kept is lost by loading again")]
    public async Task A_bracket_comes_true_is_turned_and_kept()
    {
        var path = $"{DemoVan.Address(await DemoVan.Load(running.Host.Database), "Rear lamp bracket")}?sheet=solid";
        await using var visit = await chromium.Visit(running.Host.Address, path, 1360, 860);
        var page = visit.Page;
        await visit.Button("Begin with an example").ClickAsync();
        await Expect(page.Locator(".headline")).ToContainTextAsync("Held");
        await Expect(page.Locator("td:has-text('A – B') + td").First).ToHaveTextAsync(new Regex(@"^(104\.9|105)"));
        await Expect(page.Locator("table.lines tr.doubtful strong").First).ToHaveTextAsync("P6 – S1");
        await Expect(page.Locator(".running")).ToHaveCountAsync(0, new() { Timeout = 30_000 });
        await visit.Picture("solid-desktop-light");

        var view = page.Locator(".solid-view svg");
        var before = await view.InnerHTMLAsync();
        await page.Locator(".solid-view").FocusAsync();
        await page.Keyboard.PressAsync("ArrowLeft");
        await Expect(page.GetByRole(AriaRole.Button, new() { Name = "Corner", Exact = true })).ToHaveAttributeAsync("aria-pressed", "false");
        Assert.NotEqual(before, await view.InnerHTMLAsync());

        await page.Locator("#kind").FillAsync("distance");
        await page.Locator("#from").FillAsync("P5");
        await page.Locator("#to").FillAsync("P7");
        await page.Locator("#value").FillAsync("far off");
        await visit.Button("Write down").ClickAsync();
        await Expect(page.Locator("#refusal")).ToContainTextAsync("far off");
        var count = await page.Locator("table.lines tbody tr").CountAsync();
        await page.Locator("#value").FillAsync("110.3");
        await visit.Button("Write down").ClickAsync();
        await Expect(page.Locator("table.lines tbody tr")).ToHaveCountAsync(count + 1);
        await Expect(page.Locator("section[aria-label='The part in space'] span[role=status]")).ToHaveTextAsync("Kept", new() { Timeout = 10_000 });
        await visit.Button("Draw it").ClickAsync();
        await Expect(page.Locator("figcaption:has-text('sheet 2')").First).ToBeVisibleAsync();

        await page.SetViewportSizeAsync(360, 740);
        await page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Dark });
        await page.ReloadAsync();
        await Expect(page.Locator("table.lines tbody tr")).ToHaveCountAsync(count + 1, new() { Timeout = 90_000 });
        await visit.Picture("solid-phone-dark");
        Assert.Equal(0, await page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - innerWidth)"));
        var axe = await page.RunAxe(new AxeRunOptions { RunOnly = RunOnlyOptions.Tags("wcag2a", "wcag2aa", "wcag21a", "wcag21aa") });
        Assert.Equal([], axe.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{v.Id} at {v.Nodes[0].Html}"));
        Assert.Empty(visit.Complaints);
    }
}
