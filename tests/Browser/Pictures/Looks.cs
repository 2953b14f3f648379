using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace WitnessMark.Browser.Pictures;

/// <summary>A page that stands, by day on a bench and by night on a phone: legible, no wider than the screen, and without complaint.</summary>
static class Looks
{
    static readonly (string Name, int Width, int Height, ColorScheme Scheme)[] Sheets =
        [("desktop-light", 1360, 860, ColorScheme.Light), ("phone-dark", 360, 740, ColorScheme.Dark)];

    public static async Task At(Visit visit, string name, List<string> faults)
    {
        foreach (var sheet in Sheets)
        {
            await visit.Page.SetViewportSizeAsync(sheet.Width, sheet.Height);
            await visit.Page.EmulateMediaAsync(new() { ColorScheme = sheet.Scheme });
            await visit.Page.WaitForTimeoutAsync(300);
            await visit.Whole($"{name}-{sheet.Name}");
            var over = await visit.Page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - innerWidth)");
            if (over > 0) faults.Add($"{name} {sheet.Name}: {over} px too wide");
            var axe = await visit.Page.RunAxe(new AxeRunOptions { RunOnly = RunOnlyOptions.Tags("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa") });
            faults.AddRange(axe.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{name} {sheet.Name}: {v.Id} at {v.Nodes[0].Html}"));
        }
        faults.AddRange(visit.Complaints.Select(c => $"{name}: {c}"));
        visit.Complaints.Clear();
    }
}
