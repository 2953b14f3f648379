using System.Net.Http.Json;
using WitnessMark.Stores.Photographs;
using WitnessMark.Tests;
using WitnessMark.Web.Client.Wire;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Pictures;

/// <summary>Pictures where there is no network.</summary>
public sealed class OfflinePictureTests(Chromium chromium)
{
    const string IsKept = "async () => { await navigator.serviceWorker.ready; return !!navigator.serviceWorker.controller; }";

    [Fact]
    [Truth(Grade.Property, "what was taken with no network is seen at once, and counted at the host: once")]
    public async Task A_picture_taken_with_no_network_is_shown_as_waiting_and_arrives_once()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http);
        await using var visit = await chromium.Visit(host.Address, "waiting", 360, 740, worker: true);
        await visit.Page.WaitForFunctionAsync(IsKept, null, new() { Timeout = 180_000 });
        // All that is read is read through the worker from now on; the album itself was never opened.
        await visit.Button("Take along Hartle van").ClickAsync();
        await Expect(visit.Page.GetByText("All of it lies on this device.")).ToBeVisibleAsync(new() { Timeout = 120_000 });
        // What passes through the worker is not held up by the browser's own offline: the host goes too.
        await host.Kill();
        await visit.Browser.SetOfflineAsync(true);
        await visit.Go($"vehicle/{bench.Vehicle}/pictures");
        await visit.Page.Locator("#coming-words").FillAsync("floor plate, before");
        await visit.Page.Locator("#coming-files").SetInputFilesAsync(Scene.File("before.jpg", Scene.Plate(false)));
        var own = visit.Page.GetByLabel("On this device, waiting to be sent", new() { Exact = true });
        await Expect(own.Locator(".tile.waits")).ToHaveCountAsync(1);
        await Expect(own).ToContainTextAsync("floor plate, before");
        await Expect(visit.Page.Locator(".uploads")).ToContainTextAsync("kept on this device, waiting to be sent");
        Assert.True(await own.Locator("img").EvaluateAsync<bool>("async i => { await i.decode(); return i.naturalWidth > 0; }"));
        await visit.Whole("pictures-waiting-phone");
        await own.Locator("a").ClickAsync();
        await Expect(visit.Page.Locator("h1")).ToHaveTextAsync("floor plate, before");
        await Expect(visit.Page.Locator(".title-block")).ToContainTextAsync("waiting to be sent");
        await visit.Whole("picture-waiting-phone");
        await visit.Page.GoBackAsync();
        await Expect(own.Locator(".tile.waits")).ToHaveCountAsync(1);

        await host.Restart();
        await visit.Browser.SetOfflineAsync(false);
        await visit.Page.EvaluateAsync("() => window.dispatchEvent(new Event('online'))");
        await Expect(visit.Kept).ToHaveTextAsync("All kept", new() { Timeout = 60_000 });
        await Expect(own).ToHaveCountAsync(0);
        await Expect(visit.Page.Locator(".picture-grid .tile")).ToHaveCountAsync(1);
        var kept = await host.Http.GetFromJsonAsync($"api/vehicles/{bench.Vehicle}/pictures", DeskJson.Of<PictureStretch>());
        Assert.Equal("floor plate, before", Assert.Single(kept!.Rows).Words);
        Assert.Equal(Scene.Plate(false), await host.Http.GetByteArrayAsync($"api/pictures/{kept.Rows[0].Picture}"));
    }

    [Fact]
    public async Task The_arrow_keys_turn_over_to_the_neighbours()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http);
        await using var visit = await chromium.Visit(host.Address, $"vehicle/{bench.Vehicle}/pictures");
        foreach (var words in new[] { "first", "second" })
        {
            await visit.Page.Locator("#coming-words").FillAsync(words);
            await visit.Page.Locator("#coming-files").SetInputFilesAsync(Scene.File($"{words}.jpg", Scene.Plate(words == "second")));
            await Expect(visit.Page.Locator(".picture-grid")).ToContainTextAsync(words);
        }
        await visit.Page.Locator(".picture-grid a", new() { HasText = "second" }).ClickAsync();
        var head = visit.Page.Locator("h1");
        await Expect(head).ToHaveTextAsync("second");
        await visit.Page.Keyboard.PressAsync("ArrowRight");
        await Expect(head).ToHaveTextAsync("first");
        await visit.Page.Keyboard.PressAsync("ArrowRight");
        await visit.Page.Keyboard.PressAsync("ArrowLeft");
        await Expect(head).ToHaveTextAsync("second");
        // In a field and on the picture itself the arrows do what they do there.
        await visit.Page.Locator("#picture-words").FocusAsync();
        await visit.Page.Keyboard.PressAsync("ArrowRight");
        await visit.Page.Locator("#picture").FocusAsync();
        await visit.Page.Keyboard.PressAsync("ArrowRight");
        await Expect(head).ToHaveTextAsync("second");
        Assert.Empty(visit.Complaints);
    }
}
