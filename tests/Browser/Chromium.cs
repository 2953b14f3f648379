using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(WitnessMark.Browser.Chromium))]

namespace WitnessMark.Browser;

/// <summary>Debian's own Chromium, started once and driven as a person drives it. What the page complains of is collected and must be nothing.</summary>
public sealed class Chromium : IAsyncLifetime
{
    const string Path = "/usr/bin/chromium";

    IPlaywright? _playwright;
    IBrowser? _browser;

    public async ValueTask InitializeAsync()
    {
        if (!File.Exists(Path)) throw new InvalidOperationException($"There is no {Path}: apt-get install -y chromium, then run again.");
        // The machine may be building at the same time.
        Assertions.SetDefaultExpectTimeout(30_000);
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new()
        {
            ExecutablePath = Path,
            Args = ["--no-sandbox", "--disable-quic", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync"],
        });
    }

    /// <param name="worker">Lets the app be kept on the device. Else every visit begins as the first, and requests can be held up by the test.</param>
    /// <param name="before">Script run in the page before its own.</param>
    public async Task<Visit> Visit(Uri address, string path, int width = 1360, int height = 860, ColorScheme scheme = ColorScheme.Light, bool touch = false, bool worker = false, string? before = null)
    {
        var context = await _browser!.NewContextAsync(new()
        {
            ViewportSize = new() { Width = width, Height = height },
            ColorScheme = scheme,
            HasTouch = touch,
            AcceptDownloads = true,
            ServiceWorkers = worker ? ServiceWorkerPolicy.Allow : ServiceWorkerPolicy.Block,
            // A phone on which somebody went on past the warning.
            IgnoreHTTPSErrors = address.Scheme == "https",
        });
        context.SetDefaultTimeout(60_000);
        if (before is not null) await context.AddInitScriptAsync(before);
        var visit = new Visit(context, await context.NewPageAsync(), address);
        await visit.Go(path);
        return visit;
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null) await _browser.DisposeAsync();
        _playwright?.Dispose();
    }
}
