using Microsoft.Playwright;
using WitnessMark.Browser.Stores;
using WitnessMark.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Pictures;

/// <summary>Pictures worked as a person works them: sent, drawn on, put together.</summary>
public sealed class PicturesTests(Chromium chromium)
{
    [Fact]
    [Truth(Grade.Property, "of three files two are kept and one is refused in words; what is drawn, undone and drawn by keys stands after the page is opened anew")]
    public async Task Pictures_are_sent_and_drawn_on()
    {
        await using var shed = await Shed.Open();
        await using var visit = await chromium.Visit(shed.Address, shed.Path("pictures"));
        var page = visit.Page;
        await page.Locator("#coming-words").FillAsync("plate, front");
        await page.Locator("#coming-files").SetInputFilesAsync([Scene.File("one.jpg", Scene.Plate(false)), Scene.File("two.heic", Scene.Heic), Scene.File("three.jpg", Scene.Plate(true))]);
        await Expect(page.Locator(".uploads .refusal")).ToContainTextAsync("in the phone's camera settings choose JPEG");
        await Expect(page.Locator(".picture-grid li")).ToHaveCountAsync(2);
        await Expect(page.Locator(".uploads").GetByText("kept", new() { Exact = true })).ToHaveCountAsync(2);
        Assert.True(await Shown(page.Locator(".picture-grid img").First));
        await visit.Picture("pictures-album");

        await page.Locator(".picture-grid a").First.ClickAsync();
        await Expect(page.Locator("h1")).ToHaveTextAsync("plate, front");
        await visit.Button("Arrow").ClickAsync();
        await Stroke(page, 0.2, 0.3, 0.5, 0.5);
        await Expect(page.Locator(".strokes li")).ToHaveCountAsync(1);
        await visit.Button("Pen").ClickAsync();
        await Stroke(page, 0.3, 0.7, 0.7, 0.75);
        await Expect(page.Locator(".strokes li")).ToHaveCountAsync(2);
        await visit.Button("Undo").ClickAsync();
        await Expect(page.Locator(".strokes li")).ToHaveCountAsync(1);
        // By keys: the picture is moved under the cross, Enter picks.
        await visit.Button("Circle").PressAsync("Enter");
        await page.Locator("#picture").FocusAsync();
        await visit.Type("Enter");
        for (var i = 0; i < 6; i++) await page.Keyboard.PressAsync("ArrowRight");
        await visit.Type("Enter");
        await Expect(page.Locator(".strokes li").Last).ToContainTextAsync("Red circle about the middle");
        await visit.Button("Words").ClickAsync();
        await page.Locator("#mark-text").FillAsync("bent here");
        await Stroke(page, 0.55, 0.3, 0.55, 0.3);
        await Expect(page.Locator(".strokes li")).ToHaveCountAsync(3);
        await Expect(page.Locator("#mark-kept")).ToHaveTextAsync("Kept");
        await visit.Picture("pictures-one");

        await page.ReloadAsync();
        await Expect(page.Locator(".strokes li")).ToHaveCountAsync(3);
        await Expect(page.Locator(".marks path:not(.rim)")).ToHaveCountAsync(3);
        await page.Locator("#picture-words").FillAsync("plate, rear");
        await visit.Button("Keep the words").ClickAsync();
        await Expect(page.Locator("h1")).ToHaveTextAsync("plate, rear");
        await Expect(page.Locator(".strokes li")).ToHaveCountAsync(3);
        var download = await page.RunAndWaitForDownloadAsync(() => page.GetByText("Save it as drawn on").ClickAsync());
        Assert.EndsWith("-marked.jpg", download.SuggestedFilename);
        await visit.Button("Take this picture back").ClickAsync();
        await Expect(page.Locator(".picture-grid li")).ToHaveCountAsync(1);
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.2 A and AA; Chromium's content-policy enforcement; no page wider than a phone")]
    public async Task A_pair_is_wiped_by_keys_and_every_page_is_legible()
    {
        await using var shed = await Shed.Open();
        await using var visit = await chromium.Visit(shed.Address, shed.Path("pictures"));
        var page = visit.Page;
        await page.Locator("#coming-files").SetInputFilesAsync([Scene.File("before.jpg", Scene.Plate(false)), Scene.File("after.jpg", Scene.Plate(true))]);
        await Expect(page.Locator(".picture-grid li")).ToHaveCountAsync(2);
        await visit.Look("pictures-list");
        await visit.Button("Choose several").ClickAsync();
        foreach (var tick in await page.Locator(".picture-grid input").AllAsync()) await tick.CheckAsync();
        var file = await page.RunAndWaitForDownloadAsync(() => visit.Button("Fetch the file").ClickAsync());
        Assert.StartsWith("pictures-", file.SuggestedFilename);
        using (var zip = System.IO.Compression.ZipFile.OpenRead(await file.PathAsync())) Assert.Equal(3, zip.Entries.Count);
        await visit.Button("Put the two chosen together as before and after").ClickAsync();
        await Expect(page.Locator(".wipe svg")).ToBeVisibleAsync();
        await page.Locator("#wipe").FocusAsync();
        for (var i = 0; i < 10; i++) await page.Keyboard.PressAsync("ArrowRight");
        await Expect(page.Locator("#wiped rect")).ToHaveAttributeAsync("width", "600");
        await visit.Look("pictures-pair");
        await visit.Button("Side by side").ClickAsync();
        await Expect(page.Locator(".beside img")).ToHaveCountAsync(2);
        await visit.Look("pictures-beside");
        await page.Locator(".beside a").First.ClickAsync();
        await visit.Button("Arrow").ClickAsync();
        await visit.Look("pictures-picture");
    }

    static async Task<bool> Shown(ILocator image)
    {
        await image.ScrollIntoViewIfNeededAsync();
        return await image.EvaluateAsync<bool>("async i => { await i.decode(); return i.naturalWidth === 320; }");
    }

    static async Task Stroke(IPage page, double x, double y, double toX, double toY)
    {
        var box = (await page.Locator("#picture").BoundingBoxAsync())!;
        await page.Mouse.MoveAsync(box.X + (float)(box.Width * x), box.Y + (float)(box.Height * y));
        await page.Mouse.DownAsync();
        await page.Mouse.MoveAsync(box.X + (float)(box.Width * toX), box.Y + (float)(box.Height * toY), new() { Steps = 6 });
        await page.Mouse.UpAsync();
    }
}
