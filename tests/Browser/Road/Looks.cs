using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace WitnessMark.Browser.Road;

/// <summary>Looks at the page that stands in three lights and widths.</summary>
static class Looks
{
    static readonly (string Name, int Width, int Height, ColorScheme Scheme)[] Sheets =
        [("desktop-light", 1360, 860, ColorScheme.Light), ("phone-dark", 360, 740, ColorScheme.Dark), ("phone-light", 360, 740, ColorScheme.Light)];

    /// <returns>What is wrong, a line each; the pictures are left under artifacts/screens.</returns>
    public static async Task<List<string>> Look(this Visit visit, string page)
    {
        var faults = new List<string>();
        foreach (var sheet in Sheets)
        {
            await visit.Page.SetViewportSizeAsync(sheet.Width, sheet.Height);
            await visit.Page.EmulateMediaAsync(new() { ColorScheme = sheet.Scheme });
            await visit.Page.WaitForTimeoutAsync(200);
            await visit.Whole($"first-{page}-{sheet.Name}");
            var over = await visit.Page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - innerWidth)");
            if (over > 0) faults.Add($"{page} {sheet.Name}: {over} px too wide");
            if (sheet.Name == "phone-light") continue;
            var axe = await visit.Page.RunAxe(new AxeRunOptions { RunOnly = RunOnlyOptions.Tags("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa") });
            faults.AddRange(axe.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{page} {sheet.Name}: {v.Id} at {v.Nodes[0].Html}"));
        }
        await visit.Page.SetViewportSizeAsync(Sheets[0].Width, Sheets[0].Height);
        await visit.Page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        return faults;
    }
}
