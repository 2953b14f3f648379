using System.Text;
using Microsoft.Playwright;
using WitnessMark.Tests;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser;

/// <summary>The demonstration van in the page: from readings to drawing, blank, card and forecast.</summary>
public sealed class DemoTests(Chromium chromium, RunningHost running) : IClassFixture<RunningHost>
{
    [Fact]
    public async Task The_plate_goes_from_a_misread_reading_to_a_drawing_a_card_and_the_forecast()
    {
        var van = await DemoVan.Load(running.Host.Database);
        var plate = DemoVan.Address(van, "Dynamo mounting plate");
        await using var visit = await chromium.Visit(running.Host.Address, plate);
        await Expect(visit.Page.Locator("table.lines tr.doubtful")).ToHaveCountAsync(1);
        await Expect(visit.Page.Locator(".searching")).ToHaveCountAsync(0, new() { Timeout = 60_000 });
        await visit.Picture("demo-plate");

        await visit.Walk($"{plate}?sheet=drawing");
        Assert.StartsWith("%PDF-", await Saved(visit, "Drawing, PDF"));
        Assert.StartsWith("%PDF-", await Saved(visit, "1:1 template, PDF A4"));
        Assert.Contains("<svg", await Saved(visit, "Drawing, SVG"));
        var dxf = await Saved(visit, "Cutter, DXF");
        Assert.Contains("HOLES", dxf);
        Assert.EndsWith("EOF", dxf.TrimEnd());
        await Expect(visit.Page.Locator(".sheet-paper svg").First).ToBeVisibleAsync();
        await visit.Picture("demo-drawing");

        await visit.Walk($"{plate}?sheet=card");
        await visit.Page.Locator("#wish-material").FillAsync("DC01");
        await visit.Type("Enter");
        await visit.Page.Locator("#wish-thickness").FillAsync("10 SWG");
        await visit.Button("Put it on the list").ClickAsync();
        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "See the forecast" }).ClickAsync();
        await Expect(visit.Page.Locator("table.forecast")).ToContainTextAsync("Own hours", new() { Timeout = 60_000 });
        await visit.Picture("demo-forecast");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    [Truth(Grade.CommonPractice, "22 TPI on a 5/16 in stud is BSF")]
    public async Task The_worn_stud_is_told_as_what_it_was_made_to()
    {
        var van = await DemoVan.Load(running.Host.Database);
        await using var visit = await chromium.Visit(running.Host.Address, $"{DemoVan.Address(van, "Cylinder head stud")}?sheet=made-to");
        await visit.Page.Locator("#origin").SelectOptionAsync("british");
        await Expect(visit.Page.Locator(".made-to").First).ToContainTextAsync("5/16 BSF");
        await visit.Picture("demo-stud");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task The_borrowed_bracket_says_when_it_goes_back_and_what_is_missing()
    {
        var van = await DemoVan.Load(running.Host.Database);
        await using var visit = await chromium.Visit(running.Host.Address, $"vehicle/{van.File.Vehicle.Id}");
        await Expect(visit.Page.Locator("#loans + ul")).ToContainTextAsync("2 readings are still missing");
        await visit.Walk(DemoVan.Address(van, "Headlamp bracket"));
        await Expect(visit.Page.Locator(".title-block")).ToContainTextAsync("Must still be read");
        await visit.Picture("demo-borrowed");
    }

    [Fact]
    public async Task The_folded_bracket_shows_its_blank_untyped_and_its_card()
    {
        var van = await DemoVan.Load(running.Host.Database);
        var bracket = DemoVan.Address(van, "Rear lamp bracket");
        await using var visit = await chromium.Visit(running.Host.Address, $"{bracket}?sheet=blank");
        await Expect(visit.Page.Locator(".sheet-paper svg [data-layer=BENDS] > *").First).ToBeAttachedAsync();
        Assert.Contains("BENDS", await Saved(visit, "Blank, SVG"));
        Assert.Contains("BENDS", await Saved(visit, "Blank for the cutter, DXF"));
        await visit.Picture("demo-blank");

        await visit.Walk($"{bracket}?sheet=card");
        await visit.Page.Locator("#wish-material").FillAsync("DC01");
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("main")).ToContainTextAsync("sheet 1.63 mm");
        await visit.Picture("demo-folded-card");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task What_is_typed_of_a_folded_part_is_kept_half_typed_too()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http, "Angle off the tail board");
        await using var visit = await chromium.Visit(host.Address, $"{bench.Address}?sheet=blank");
        await visit.Button("Begin with an angle").ClickAsync();
        Assert.Contains("BENDS", await Saved(visit, "Blank for the cutter, DXF"));
        await Kept(visit);

        const string Half = """{ "title": "cut off", "thick""";
        await host.Kill();
        await visit.Page.Locator("#bracket").FillAsync(Half);
        await Expect(visit.Page.Locator(".refusal")).ToBeVisibleAsync();
        await visit.Page.GotoAsync("about:blank");
        await host.Restart();
        await visit.Go($"{bench.Address}?sheet=blank");
        await Expect(visit.Page.Locator("#bracket")).ToHaveValueAsync(Half);
        await Kept(visit);

        await visit.Page.EvaluateAsync("localStorage.clear()");
        await visit.Page.ReloadAsync();
        await Expect(visit.Page.Locator("#bracket")).ToHaveValueAsync(Half);
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task A_folded_part_changed_elsewhere_is_asked_about()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http, "Angle typed twice");
        await using var mine = await chromium.Visit(host.Address, $"{bench.Address}?sheet=blank");
        await using var theirs = await chromium.Visit(host.Address, $"{bench.Address}?sheet=blank");
        await theirs.Page.Locator("#bracket").FillAsync("{ theirs");
        await Kept(theirs);
        await mine.Page.Locator("#bracket").FillAsync("{ mine");
        await Expect(mine.Page.Locator("#bracket-other")).ToHaveValueAsync("{ theirs");
        await mine.Picture("blank-clash");
        await mine.Button("Keep this one").ClickAsync();
        await Kept(mine);
        await theirs.Page.Locator("#bracket").FillAsync("{ again");
        await theirs.Button("Take the other").ClickAsync();
        await Expect(theirs.Page.Locator("#bracket")).ToHaveValueAsync("{ mine");
    }

    [Fact]
    public async Task An_instrument_of_ones_own_counts_in_the_readings()
    {
        // A host of its own: a worse calliper would change the other tests.
        await using var host = await HostProcess.Start();
        var van = await DemoVan.Load(host.Database);
        await using var visit = await chromium.Visit(host.Address, "shop");
        await visit.Page.GetByLabel("Error of the calliper").FillAsync("0.3");
        await visit.Type("Tab");
        await Expect(visit.Page.Locator("td[role=status]", new() { HasTextString = "Saved" })).ToHaveCountAsync(1);
        await visit.Walk(DemoVan.Address(van, "Headlamp bracket"));
        // 2·√(0.02²/12 + 0.3²/3 + 0.01²) mm, JCGM 100.
        await Expect(visit.Page.Locator("td.residual .under", new() { HasTextString = "± 0.35" }).First).ToBeVisibleAsync();
    }

    static Task Kept(Visit visit) => Expect(visit.Page.Locator("[role=status]", new() { HasTextRegex = new("^Kept$") })).ToHaveCountAsync(1, new() { Timeout = 15_000 });

    static async Task<string> Saved(Visit visit, string button)
    {
        var download = await visit.Page.RunAndWaitForDownloadAsync(() => visit.Button(button).ClickAsync());
        await using var stream = await download.CreateReadStreamAsync();
        using var bytes = new MemoryStream();
        await stream.CopyToAsync(bytes);
        return Encoding.Latin1.GetString(bytes.ToArray());
    }
}
