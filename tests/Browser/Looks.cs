using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace WitnessMark.Browser;

/// <summary>
/// A page that stands, by day on a bench and by night on a phone: no wider than the screen, nothing serious or critical by axe-core's rules
/// for WCAG 2.0, 2.1 and 2.2 A and AA, no complaint of the browser. Another light and width on the page that stands: opening it anew would
/// work everything out again.
/// </summary>
static class Looks
{
    static readonly (string Name, int Width, int Height, ColorScheme Scheme)[] Sheets =
        [("desktop-light", 1360, 860, ColorScheme.Light), ("phone-dark", 360, 740, ColorScheme.Dark)];

    static readonly AxeRunOptions Rules = new() { RunOnly = RunOnlyOptions.Tags("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa") };

    /// <summary>The pictures are left under artifacts/screens; the page stands afterwards as wide as before, by day.</summary>
    public static async Task Look(this Visit visit, string name)
    {
        var was = visit.Page.ViewportSize!;
        var faults = new List<string>();
        foreach (var sheet in Sheets)
        {
            await visit.Page.SetViewportSizeAsync(sheet.Width, sheet.Height);
            await visit.Page.EmulateMediaAsync(new() { ColorScheme = sheet.Scheme });
            await visit.Page.WaitForTimeoutAsync(200);
            await visit.Whole($"{name}-{sheet.Name}");
            if (await visit.TooWide() is { Length: > 0 } over) faults.Add($"{name} {sheet.Name}: {over}");
            var axe = await visit.Page.RunAxe(Rules);
            faults.AddRange(axe.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{name} {sheet.Name}: {v.Id} at {v.Nodes[0].Html}"));
        }
        await visit.Page.SetViewportSizeAsync(was.Width, was.Height);
        await visit.Page.EmulateMediaAsync(new() { ColorScheme = ColorScheme.Light });
        Assert.Equal([], faults.Concat(visit.Complaints.Select(c => $"{name}: {c}")));
    }
}
