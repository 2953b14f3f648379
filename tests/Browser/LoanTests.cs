using System.IO.Compression;
using Microsoft.Playwright;
using WitnessMark.Browser.Stores;
using WitnessMark.Stores;
using WitnessMark.Tests;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser;

/// <summary>A borrowed sample on its way back, worked as on the last evening.</summary>
public sealed class LoanTests(Chromium chromium)
{
    [Fact]
    [Truth(Grade.Property, "demo/README.md: two readings are still to be taken, and H6 hangs on one distance until they are")]
    public async Task A_loan_says_what_is_open_keeps_what_is_left_and_gives_everything_in_one_file()
    {
        await using var shed = await Shed.Open();
        await using var visit = await chromium.Visit(shed.Address, shed.Path("loans"), 360, 740, touch: true);
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Not ready: 4 open" }).ClickAsync();
        await Expect(visit.Page.Locator(".headline")).ToHaveTextAsync("Not ready to go back to Wendeline Orrick: 4 things still open.");
        await Expect(visit.Page.Locator(".points li").Nth(2)).ToContainTextAsync("H6 is not held");
        await visit.Look("loan");

        await visit.Page.Locator("#loan-pictures").SetInputFilesAsync(new FilePayload { Name = "bracket.png", MimeType = "image/png", Buffer = Shed.Png });
        await Expect(visit.Page.Locator(".headline")).ToContainTextAsync("3 things still open");
        var loose = visit.Page.Locator(".points li").Nth(2);
        await loose.Locator("summary").ClickAsync();
        await loose.Locator("input").FillAsync("H6 is not used on ours");
        await loose.GetByRole(AriaRole.Button, new() { Name = "Leave it" }).ClickAsync();
        await Expect(visit.Page.Locator(".headline")).ToContainTextAsync("2 things still open; one point marked as not needed");
        await visit.Page.ReloadAsync();
        await Expect(visit.Page.Locator(".points li.left")).ToContainTextAsync("H6 is not used on ours");

        var waiting = visit.Page.WaitForDownloadAsync();
        await visit.Button("Everything measured, in one file").ClickAsync();
        await using var stream = await (await waiting).CreateReadStreamAsync();
        using var copy = new MemoryStream();
        await stream.CopyToAsync(copy);
        using var zip = new ZipArchive(copy);
        Assert.Equal(["README.txt", "readings.csv", "reading-sheet.csv", "plan.json", "plan.svg", "photograph-1.png", "manifest.sha256"], zip.Entries.Select(e => e.FullName));
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    [Truth(Grade.Property, "six holes and their sizes: eighteen unknowns less the three that say where the part lies; a list that checks each reading is longer")]
    public async Task What_to_read_is_a_list_that_is_ticked_off_as_values_are_typed()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http, "Bracket on its last evening",
            [.. new[] { (0, 0), (76, 0), (76, 57), (0, 57), (38, 28), (115, 28) }.Select((p, i) => new SketchedFeature($"H{i + 1}", "hole", "", "", p.Item1, p.Item2, null, 9.5, null))]);
        await using var visit = await chromium.Visit(host.Address, $"{bench.Address}?sheet=taking", 360, 740, touch: true);
        await Expect(visit.Page.Locator(".headline")).ToContainTextAsync("readings to take");
        var steps = await visit.Page.Locator(".taking li").CountAsync();
        Assert.InRange(steps, 16, 30);
        var first = await visit.Page.Locator(".taking li").First.InnerTextAsync();
        await visit.Page.Locator("#step-1").FillAsync("9.52");
        await visit.Page.Locator("#step-1").PressAsync("Enter");
        await Expect(visit.Page.Locator("#step-2")).ToBeFocusedAsync();
        await visit.Page.Locator("#step-2").FillAsync("nine");
        await visit.Button("Write down 2").ClickAsync();
        await Expect(visit.Page.Locator(".taking .refusal")).ToContainTextAsync("nine");
        await visit.Look("taking");
        await visit.Page.ReloadAsync();
        await Expect(visit.Page.Locator(".taking li.taken")).ToContainTextAsync("✓ 9.52");
        await Expect(visit.Page.Locator(".headline")).ToContainTextAsync($"{steps - 1} of {steps} readings left");
        Assert.Contains(Assert.Single(await bench.Standing(host.Http)).Kind, first);
        Assert.Empty(visit.Complaints);
    }
}
