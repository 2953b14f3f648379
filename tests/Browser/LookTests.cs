using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using WitnessMark.FrontOffice.MeasureSolid;
using WitnessMark.FrontOffice.TakeInVehicle;
using WitnessMark.Records;
using WitnessMark.Stores.Shapes;
using WitnessMark.Tests;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser;

/// <summary>Every page by day and night, on a bench and on a phone.</summary>
public sealed class LookTests(Chromium chromium, RunningHost running) : IClassFixture<Chromium>, IClassFixture<RunningHost>
{
    static readonly (string Name, int Width, int Height, ColorScheme Scheme)[] Sheets =
        [("desktop-light", 1360, 860, ColorScheme.Light), ("desktop-dark", 1360, 860, ColorScheme.Dark), ("phone-dark", 360, 740, ColorScheme.Dark)];

    [Fact]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.1 A and AA; Chromium's content-policy enforcement")]
    public async Task Every_page_is_legible_keeps_its_width_and_breaks_no_policy()
    {
        foreach (var (page, path) in Pages(await DemoVan.Load(running.Host.Database))) await Look(page, path, "h1");
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.1 A and AA; Chromium's content-policy enforcement")]
    public async Task Every_sheet_of_a_survey_in_depth_and_the_loans_are_legible_too()
    {
        var van = await DemoVan.Load(running.Host.Database);
        await SurveyInSpace(van);
        foreach (var (page, path, shown) in Depth(van)) await Look(page, path, shown);
    }

    /// <summary>The old rear lamp bracket gets the demonstration's sheet in space.</summary>
    async Task SurveyInSpace(TakeInResult van)
    {
        var id = Guid.Parse(DemoVan.Address(van, "Rear lamp bracket")[^36..]);
        var row = new TypedShape(id, van.File.Vehicle.Id, van.File.Samples.Single(s => s.Id == id).PartId, StoredSolid.Kind, "Survey in space", SolidExample.Text, Dropped: false);
        await (await RecordRoom.Open(running.Host.Database)).Desk.Shapes.Save(row, basedOn: 0);
    }

    /// <param name="shown">Stands on the page when what takes long has been worked out.</param>
    async Task Look(string page, string path, string shown)
    {
        await using var visit = await chromium.Visit(running.Host.Address, path, Sheets[0].Width, Sheets[0].Height, Sheets[0].Scheme);
        await Expect(visit.Page.Locator(shown).First).ToBeVisibleAsync(new() { Timeout = 120_000 });
        await Expect(visit.Page.Locator("main [role=status]:has-text('…')")).ToHaveCountAsync(0);
        foreach (var sheet in Sheets)
        {
            // Another light and width on the page that stands: opening it anew would work everything out again.
            await visit.Page.SetViewportSizeAsync(sheet.Width, sheet.Height);
            await visit.Page.EmulateMediaAsync(new() { ColorScheme = sheet.Scheme });
            await visit.Page.WaitForTimeoutAsync(300);
            await visit.Whole($"{page}-{sheet.Name}");
            Assert.Equal((page, sheet.Name, 0), (page, sheet.Name, await visit.Page.EvaluateAsync<int>("Math.max(0, document.documentElement.scrollWidth - innerWidth)")));
            var axe = await visit.Page.RunAxe(new AxeRunOptions { RunOnly = RunOnlyOptions.Tags("wcag2a", "wcag2aa", "wcag21a", "wcag21aa") });
            Assert.Equal([], axe.Violations.Where(v => v.Impact is "serious" or "critical").Select(v => $"{page} {sheet.Name}: {v.Id} at {v.Nodes[0].Html}"));
        }
        Assert.Empty(visit.Complaints);
    }

    static (string, string)[] Pages(TakeInResult van)
    {
        var plate = DemoVan.Address(van, "Dynamo mounting plate");
        return
        [
            ("stores", ""), ("vehicle", $"vehicle/{van.File.Vehicle.Id}"), ("part", plate[..plate.IndexOf("/sample", StringComparison.Ordinal)]), ("measure", plate),
            ("made-to", $"{DemoVan.Address(van, "Cylinder head stud")}?sheet=made-to"), ("drawing", $"{plate}?sheet=drawing"), ("blank", $"{plate}?sheet=blank"), ("blank-folded", $"{DemoVan.Address(van, "Rear lamp bracket")}?sheet=blank"),
            ("card", $"{plate}?sheet=card"), ("planning", "planning"), ("shop", "shop"),
        ];
    }

    static (string, string, string)[] Depth(TakeInResult van)
    {
        var (plate, lent) = (DemoVan.Address(van, "Dynamo mounting plate"), DemoVan.Address(van, "Headlamp bracket"));
        return
        [
            ("taking", $"{lent}?sheet=taking", ".taking"), ("photo", $"{plate}?sheet=photo", ".card"), ("solid", $"{DemoVan.Address(van, "Rear lamp bracket")}?sheet=solid", ".headline"),
            ("intent", $"{plate}?sheet=intent", ".headline"), ("return", $"{lent}?sheet=return", ".points"), ("loans", $"vehicle/{van.File.Vehicle.Id}/loans", "a:has-text('Not ready: 4 open')"),
        ];
    }
}
