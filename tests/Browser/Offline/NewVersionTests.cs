using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Offline;

/// <summary>A newer app lies ready: it is told, and taken up when the person says so.</summary>
public sealed class NewVersionTests(Chromium chromium, RunningHost running) : IClassFixture<RunningHost>
{
    [Fact]
    public async Task A_new_version_waits_until_the_person_takes_it_up_and_what_waits_to_be_sent_stays()
    {
        var bench = await Bench.Lay(running.Host.Http);
        await using var visit = await chromium.Visit(running.Host.Address, "waiting", worker: true);
        await visit.Page.WaitForFunctionAsync("async () => { await navigator.serviceWorker.ready; return !!navigator.serviceWorker.controller; }", null, new() { Timeout = 180_000 });
        await visit.Go("waiting");
        await Expect(visit.Page.Locator(".new-version")).ToHaveCountAsync(0);
        await visit.Browser.SetOfflineAsync(true);
        await visit.TakeIn(Device.Waiting(bench, "phone", 3).File);
        await visit.Browser.SetOfflineAsync(false);
        await visit.Page.RouteAsync("**/api/**/desk/**", route => route.Request.Method == "POST" ? route.AbortAsync() : route.ContinueAsync());

        // To the browser a worker under another address is another version of it.
        await visit.Page.EvaluateAsync("async () => { globalThis.before = true; await navigator.serviceWorker.register('service-worker.js?next'); }");
        await Expect(visit.Page.Locator(".new-version")).ToBeVisibleAsync(new() { Timeout = 120_000 });
        Assert.False(await visit.Page.EvaluateAsync<bool>("navigator.serviceWorker.controller.scriptURL.endsWith('?next')"));
        await visit.Page.Locator(".new-version").ClickAsync();
        await visit.Page.WaitForFunctionAsync("() => !globalThis.before && navigator.serviceWorker.controller?.scriptURL.endsWith('?next')", null, new() { Timeout = 120_000 });
        await Expect(visit.Kept).Not.ToHaveTextAsync("All kept");
        await visit.Page.UnrouteAllAsync();
        await visit.Page.EvaluateAsync("() => window.dispatchEvent(new Event('online'))");
        await Expect(visit.Kept).ToHaveTextAsync("All kept", new() { Timeout = 60_000 });
    }
}
