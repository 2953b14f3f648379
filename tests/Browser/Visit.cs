using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace WitnessMark.Browser;

/// <summary>One person at one page.</summary>
public sealed class Visit : IAsyncDisposable
{
    readonly IBrowserContext _context;
    readonly Uri _address;
    readonly ConcurrentDictionary<IRequest, bool> _asking = new();

    public Visit(IBrowserContext context, IPage page, Uri address)
    {
        (_context, Page, _address) = (context, page, address);
        page.Console += (_, m) =>
        {
            // A host that is away is told as a failed request: that is the browser's own line, not a fault of the page.
            if (m.Type is "error" or "warning" && !m.Text.Contains("Failed to load resource") && !m.Text.Contains("net::ERR_") && !m.Text.Contains("blocked by Playwright")) Complaints.Add(m.Text);
        };
        page.RequestFinished += (_, r) => _asking.TryRemove(r, out var _);
        page.RequestFailed += (_, r) => _asking.TryRemove(r, out var _);
        page.PageError += (_, e) => Complaints.Add(e);
        page.Request += (_, r) =>
        {
            // What a page asked that is opened anew is answered to nobody, and nothing tells of it.
            if (r.IsNavigationRequest) _asking.Clear();
            _asking[r] = true;
            if (new Uri(r.Url) is { Scheme: "http" or "https" } to && to.Authority != address.Authority) Complaints.Add($"asked {r.Url}");
        };
    }

    public IPage Page { get; }

    /// <summary>The same browser's other pages, its storage and its network.</summary>
    public IBrowserContext Browser => _context;

    /// <summary>Another tab of the same browser.</summary>
    public async Task<Visit> Tab(string path)
    {
        var tab = new Visit(_context, await _context.NewPageAsync(), _address);
        await tab.Go(path);
        return tab;
    }

    /// <summary>Console errors (content-policy breaches among them), faults, and requests to anywhere else.</summary>
    public List<string> Complaints { get; } = [];

    public ILocator Paper => Page.Locator("#paper");

    public ILocator Lines => Page.Locator("table.lines tbody tr");

    public ILocator Kept => Page.Locator(".kept");

    public async Task Go(string path)
    {
        await Page.GotoAsync(new Uri(_address, path).ToString());
        await Page.Locator("h1").First.WaitForAsync();
    }

    /// <summary>Walks on within the app, as a link does: it is not started anew.</summary>
    public async Task Walk(string path)
    {
        await Page.EvaluateAsync("path => Blazor.navigateTo(path)", path);
        await Page.WaitForURLAsync(new Uri(_address, path).ToString());
        // The page that was left stands until the next one is drawn, and that asks the host first.
        for (var (quiet, waits) = (0, 0); quiet < 3 && waits < 300; waits++)
        {
            await Page.WaitForTimeoutAsync(100);
            quiet = _asking.IsEmpty ? quiet + 1 : 0;
        }
        await Page.Locator("h1").First.WaitForAsync();
    }

    public ILocator Button(string name) => Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    public async Task Type(params string[] keys)
    {
        foreach (var k in keys)
            if (k is "Enter" or "Tab" or "ArrowDown" or "Escape") await Page.Keyboard.PressAsync(k);
            else await Page.Keyboard.TypeAsync(k);
    }

    /// <summary>Touches the paper at a share of its width and height, 0 to 1 from the left top.</summary>
    public async Task Touch(double x, double y)
    {
        var box = (await Paper.BoundingBoxAsync())!;
        await Page.Mouse.ClickAsync(box.X + (float)(box.Width * x), box.Y + (float)(box.Height * y));
    }

    public async Task Draw(double x, double y, double toX, double toY)
    {
        var box = (await Paper.BoundingBoxAsync())!;
        await Page.Mouse.MoveAsync(box.X + (float)(box.Width * x), box.Y + (float)(box.Height * y));
        await Page.Mouse.DownAsync();
        await Page.Mouse.MoveAsync(box.X + (float)(box.Width * toX), box.Y + (float)(box.Height * toY), new() { Steps = 5 });
        await Page.Mouse.UpAsync();
    }

    /// <summary>How many px the page is too wide, and the innermost elements that stick out; empty when it keeps its width.</summary>
    public Task<string> TooWide() => Page.EvaluateAsync<string>("""
        () => {
          const over = document.documentElement.scrollWidth - innerWidth;
          if (over <= 0) return "";
          const out = e => e.getBoundingClientRect().right > innerWidth + 0.5 && e.getClientRects().length > 0;
          const held = e => { for (let p = e.parentElement; p; p = p.parentElement) if (getComputedStyle(p).overflowX !== "visible") return true; return false; };
          const named = e => `${e.tagName.toLowerCase()}.${[...e.classList].join(".")} “${e.textContent.trim().slice(0, 30)}”`;
          const all = [...document.body.querySelectorAll("*")].filter(e => out(e) && !held(e) && ![...e.children].some(out));
          return `${over} px: ${all.slice(0, 6).map(named).join("; ")}`;
        }
        """);

    /// <summary>The whole page, however far it scrolls.</summary>
    public Task Whole(string name) => Picture(name, whole: true);

    /// <summary>Kept for the eye under artifacts/screens, never committed.</summary>
    public async Task Picture(string name, bool whole = false)
    {
        var root = new DirectoryInfo(AppContext.BaseDirectory);
        while (root is not null && !File.Exists(System.IO.Path.Combine(root.FullName, "WitnessMark.slnx"))) root = root.Parent;
        await Page.ScreenshotAsync(new() { Path = System.IO.Path.Combine(root!.FullName, "artifacts", "screens", name + ".png"), FullPage = whole });
    }

    public ValueTask DisposeAsync() => _context.DisposeAsync();
}
