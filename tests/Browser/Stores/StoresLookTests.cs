using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using WitnessMark.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Stores;

/// <summary>Every page of the stores by day and night, on a bench and on a phone, with something on it.</summary>
public sealed class StoresLookTests(Chromium chromium) : IClassFixture<Chromium>
{
    static readonly (string Name, int Width, int Height, ColorScheme Scheme)[] Sheets =
        [("desktop-light", 1360, 860, ColorScheme.Light), ("phone-dark", 360, 740, ColorScheme.Dark)];

    [Fact]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.1 A and AA; Chromium's content-policy enforcement")]
    public async Task Every_page_is_legible_keeps_its_width_and_breaks_no_policy()
    {
        await using var shed = await Shed.Open();
        await shed.Fill();
        var faults = new List<string>();
        foreach (var (page, path) in Pages(shed)) await Look(shed, page, path, faults);
        Assert.Equal([], faults);
    }

    async Task Look(Shed shed, string page, string path, List<string> faults)
    {
        await using var visit = await chromium.Visit(shed.Address, path, Sheets[0].Width, Sheets[0].Height, Sheets[0].Scheme);
        await Expect(visit.Page.Locator("main [role=status]:has-text('…')")).ToHaveCountAsync(0);
        foreach (var sheet in Sheets)
        {
            // Another light and width on the page that stands: opening it anew would work everything out again.
            await visit.Page.SetViewportSizeAsync(sheet.Width, sheet.Height);
            await visit.Page.EmulateMediaAsync(new() { ColorScheme = sheet.Scheme });
            await visit.Page.WaitForTimeoutAsync(300);
            await visit.Picture($"stores-look-{page}-{sheet.Name}");
            var over = await visit.Page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - innerWidth)");
            if (over > 0) faults.Add($"{page} {sheet.Name}: {over} px too wide");
            var axe = await visit.Page.RunAxe(new AxeRunOptions { RunOnly = RunOnlyOptions.Tags("wcag2a", "wcag2aa", "wcag21a", "wcag21aa") });
            faults.AddRange(axe.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{page} {sheet.Name}: {v.Id} at {v.Nodes[0].Html}"));
        }
        faults.AddRange(visit.Complaints.Select(c => $"{page}: {c}"));
    }

    static (string, string)[] Pages(Shed shed) =>
    [
        ("tree", shed.Path()), ("apart", shed.Path("apart")), ("refit", shed.Path("refit")), ("loans", shed.Path("loans")), ("orders", shed.Path("orders")),
        ("outwork", shed.Path("outwork")), ("places", shed.Path("places")), ("tags", shed.Path("tags")), ("wants", shed.Path("wants")), ("list", shed.Path("list")),
        ("part", shed.Part("Dynamo mounting plate")),
    ];
}
