using WitnessMark.Tests;
using WitnessMark.Web.Tests.Pairing;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Pairing;

/// <summary>The pages of pairing by day and night, at the desk and on a phone.</summary>
public sealed class PairingLookTests(Chromium chromium)
{
    [Fact]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.2 A and AA; Chromium's content-policy enforcement")]
    public async Task Every_page_is_legible_keeps_its_width_and_breaks_no_policy()
    {
        await using var house = await PairedHouse.Open();
        using var phone = await house.PairedPhone("Phone in the shed");
        using var tablet = await house.PairedPhone("Tablet with the long name that somebody gave it one evening");
        await using (var desk = await chromium.Visit(house.Desk, "devices"))
        {
            await desk.Button("Make a code").ClickAsync();
            await desk.Page.GetByText("Rename Phone in the shed").ClickAsync();
            await desk.Button("Drop Phone in the shed …").ClickAsync();
            await desk.Look("pairing-devices");
        }
        await using (var pair = await chromium.Visit(house.Lan, "pair"))
        {
            await pair.Page.Locator("#pair-code").FillAsync("1234");
            await pair.Page.Locator("#pair-name").FillAsync("Phone");
            await pair.Button("Pair this device").ClickAsync();
            await Expect(pair.Page.Locator(".refusal")).ToBeVisibleAsync();
            await pair.Look("pairing-pair");
            await pair.Walk("trust");
            await pair.Page.Locator("summary").First.ClickAsync();
            await pair.Look("pairing-trust");
            await pair.Walk("devices");
            await Expect(pair.Page.Locator("main")).ToContainTextAsync("This device is not paired");
            await pair.Look("pairing-devices-unpaired");
        }
    }
}
