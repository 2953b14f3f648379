using WitnessMark.Tests;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Intent;

/// <summary>What was meant, with its drawing.</summary>
public sealed class IntentLookTests(Chromium chromium, RunningHost running) : IClassFixture<RunningHost>
{
    [Fact]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.1 A and AA; the demonstration plate's findings as docs/guide/intent.md has them")]
    public async Task The_demonstration_plate_is_drawn_as_meant()
    {
        var van = await DemoVan.Load(running.Host.Database);
        await using var visit = await chromium.Visit(running.Host.Address, $"{DemoVan.Address(van, "Dynamo mounting plate")}?sheet=intent");
        await Searched(visit);
        await Expect(visit.Page.Locator("section[aria-label='Taken'] li").First).ToContainTextAsync("H1, H2, H3, H4, H7 and H8 are of one size");
        await Expect(visit.Page.Locator("section[aria-labelledby='meant-drawing'] .sheet-paper svg")).ToBeAttachedAsync();
        await visit.Look("intent-plate");
    }

    static async Task Searched(Visit visit)
    {
        await Expect(visit.Page.Locator(".findings li").First).ToBeVisibleAsync(new() { Timeout = 120_000 });
        await Expect(visit.Button("Look again")).ToBeVisibleAsync();
    }
}
