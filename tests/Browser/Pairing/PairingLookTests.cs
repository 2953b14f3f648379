using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using WitnessMark.Tests;
using WitnessMark.Web.Tests.Pairing;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Pairing;

/// <summary>The pages of pairing by day and night, at the desk and on a phone.</summary>
public sealed class PairingLookTests(Chromium chromium)
{
    static readonly (string Name, int Width, int Height, ColorScheme Scheme)[] Sheets =
        [("desk-light", 1360, 860, ColorScheme.Light), ("desk-dark", 1360, 860, ColorScheme.Dark), ("phone-light", 360, 740, ColorScheme.Light), ("phone-dark", 360, 740, ColorScheme.Dark)];

    [Fact]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.2 A and AA; Chromium's content-policy enforcement")]
    public async Task Every_page_is_legible_keeps_its_width_and_breaks_no_policy()
    {
        await using var house = await PairedHouse.Open();
        using var phone = await house.PairedPhone("Phone in the shed");
        using var tablet = await house.PairedPhone("Tablet with the long name that somebody gave it one evening");
        var faults = new List<string>();
        await using (var desk = await chromium.Visit(house.Desk, "devices"))
        {
            await desk.Button("Make a code").ClickAsync();
            await desk.Page.GetByText("Rename Phone in the shed").ClickAsync();
            await desk.Button("Drop Phone in the shed …").ClickAsync();
            await Look(desk, "devices", faults);
        }
        await using (var pair = await chromium.Visit(house.Lan, "pair"))
        {
            await pair.Page.Locator("#pair-code").FillAsync("1234");
            await pair.Page.Locator("#pair-name").FillAsync("Phone");
            await pair.Button("Pair this device").ClickAsync();
            await Expect(pair.Page.Locator(".refusal")).ToBeVisibleAsync();
            await Look(pair, "pair", faults);
            await pair.Go("trust");
            await pair.Page.Locator("summary").First.ClickAsync();
            await Look(pair, "trust", faults);
            await pair.Go("devices");
            await Expect(pair.Page.Locator("main")).ToContainTextAsync("This device is not paired");
            await Look(pair, "devices-unpaired", faults);
        }
        Assert.Equal([], faults);
    }

    static async Task Look(Visit visit, string page, List<string> faults)
    {
        foreach (var sheet in Sheets)
        {
            await visit.Page.SetViewportSizeAsync(sheet.Width, sheet.Height);
            await visit.Page.EmulateMediaAsync(new() { ColorScheme = sheet.Scheme });
            await visit.Page.WaitForTimeoutAsync(300);
            await visit.Whole($"pairing-look-{page}-{sheet.Name}");
            var over = await visit.Page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - innerWidth)");
            if (over > 0) faults.Add($"{page} {sheet.Name}: {over} px too wide");
            var axe = await visit.Page.RunAxe(new AxeRunOptions { RunOnly = RunOnlyOptions.Tags("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa") });
            faults.AddRange(axe.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{page} {sheet.Name}: {v.Id} at {v.Nodes[0].Html}"));
        }
        faults.AddRange(visit.Complaints.Select(c => $"{page}: {c}"));
    }
}
