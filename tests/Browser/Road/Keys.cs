using Microsoft.Playwright;

namespace WitnessMark.Browser.Road;

/// <summary>A person without a mouse: whatever is not reached by Tab is not reached.</summary>
static class Keys
{
    const int MostTabs = 150;

    /// <summary>Tabs on, round the page if need be, until the first element that is meant has the focus.</summary>
    public static async Task Reach(this Visit visit, ILocator wanted)
    {
        await wanted.First.WaitForAsync(new() { State = WaitForSelectorState.Attached });
        for (var i = 0; i < MostTabs; i++)
        {
            if (await wanted.First.EvaluateAsync<bool>("e => e === document.activeElement")) return;
            await visit.Page.Keyboard.PressAsync("Tab");
        }
        Assert.Fail($"No Tab leads to {wanted}.");
    }

    public static Task Reach(this Visit visit, string selector) => visit.Reach(visit.Page.Locator(selector));

    /// <summary>Reaches it and presses Enter.</summary>
    public static async Task Press(this Visit visit, ILocator wanted)
    {
        await visit.Reach(wanted);
        await visit.Page.Keyboard.PressAsync("Enter");
    }

    public static Task PressButton(this Visit visit, string name) => visit.Press(visit.Button(name));

    public static Task FollowLink(this Visit visit, string name, bool exact = true) =>
        visit.Press(visit.Page.GetByRole(AriaRole.Link, new() { Name = name, Exact = exact }));

    /// <summary>Reaches the field and writes in place of what stands there.</summary>
    public static async Task Write(this Visit visit, string selector, string text)
    {
        await visit.Reach(selector);
        await visit.Page.Keyboard.PressAsync("Control+a");
        await visit.Page.Keyboard.TypeAsync(text);
    }

    public static async Task Times(this Visit visit, string key, int times)
    {
        for (var i = 0; i < times; i++) await visit.Page.Keyboard.PressAsync(key);
    }

    public static async Task<byte[]> Bytes(this Visit visit, string button)
    {
        var download = await visit.Page.RunAndWaitForDownloadAsync(() => visit.PressButton(button));
        await using var stream = await download.CreateReadStreamAsync();
        using var bytes = new MemoryStream();
        await stream.CopyToAsync(bytes);
        return bytes.ToArray();
    }
}
