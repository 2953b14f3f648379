using System.Diagnostics;
using System.Net.Http.Json;
using Microsoft.Playwright;
using WitnessMark.Stores.Notes;
using WitnessMark.Tests;
using WitnessMark.Web.Client.Wire;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Shell;

/// <summary>What stands round every page, worked as a person works it.</summary>
public sealed class ShellTests(Chromium chromium, FilledVan van) : IClassFixture<FilledVan>
{
    [Fact]
    [Truth(Grade.Published, "WAI-ARIA Authoring Practices, combobox with a listbox: the active descendant follows the arrows, Enter takes it, the focus stays in the field; WCAG 2.1.4 for the keys")]
    public async Task A_misspelt_word_finds_the_part_and_the_keys_lead_to_it()
    {
        await using var visit = await chromium.Visit(van.Address, van.Path());
        await Expect(visit.Page.Locator("#find")).ToBeVisibleAsync();
        await visit.Page.Keyboard.PressAsync("/");
        var field = visit.Page.Locator("#find-all");
        await Expect(field).ToBeFocusedAsync();
        await Expect(visit.Page.Locator("dialog[open] [role=status]")).ToHaveTextAsync("");
        await visit.Type("dinamo mountng");
        await Expect(visit.Page.Locator("[role=option][aria-selected=true]")).ToContainTextAsync("Dynamo mounting plate");
        await Expect(visit.Page.Locator("[role=option][aria-selected=true] .why")).ToContainTextAsync("read as");
        await visit.Type("ArrowDown");
        await Expect(field).ToHaveAttributeAsync("aria-activedescendant", "found-1");
        await Expect(field).ToBeFocusedAsync();
        await field.FillAsync("bent jack");
        await Expect(visit.Page.Locator("[role=option]").First).ToContainTextAsync("The lug was bent by a jack");
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("h1")).ToHaveTextAsync("Dynamo mounting plate");
        await Expect(visit.Page.Locator("nav.trail li")).ToHaveTextAsync([van.Van.File.Vehicle.Name, "Engine"]);
        await Expect(visit.Page.Locator("h1")).ToBeFocusedAsync();

        await visit.Type("g", "b");
        await Expect(visit.Page.Locator("h1")).ToHaveTextAsync("Samples");
        await Expect(visit.Page.Locator("table.samples tbody tr").First).ToContainTextAsync("loose", new() { Timeout = 60_000 });
        await Expect(visit.Page.Locator(".offices .active")).ToContainTextAsync("Drawing office");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    [Truth(Grade.Property, "what is half written is there again; what is kept is what the host has; the focus goes back whence it came")]
    public async Task A_note_is_added_from_anywhere_and_outlives_a_closed_sheet()
    {
        var path = van.Part("Headlamp bracket");
        await using var visit = await chromium.Visit(van.Address, path, 360, 740);
        await Expect(visit.Page.Locator("#samples")).ToBeVisibleAsync();
        await visit.Button("Quick add").FocusAsync();
        await visit.Type("Enter");
        await visit.Page.Locator("#quick-words").FillAsync("Left lug is 3 mm thicker");
        await visit.Type("Escape");
        await Expect(visit.Page.Locator("dialog[open]")).ToHaveCountAsync(0);
        await Expect(visit.Button("Quick add")).ToBeFocusedAsync();
        await visit.Page.ReloadAsync();
        await Expect(visit.Page.Locator("#samples")).ToBeVisibleAsync();
        await visit.Button("Quick add").ClickAsync();
        await Expect(visit.Page.Locator("#quick-words")).ToHaveValueAsync("Left lug is 3 mm thicker");
        await Expect(visit.Page.Locator("#quick-part")).ToHaveValueAsync("Headlamp bracket RH");
        await visit.Button("Write it down").ClickAsync();
        await Expect(visit.Page.Locator("dialog[open] .good")).ToHaveTextAsync("Written down.");
        using var http = new HttpClient { BaseAddress = van.Address };
        var notes = await http.GetFromJsonAsync($"api/vehicles/{van.Vehicle}/desk/Note", DeskJson.Of<System.Collections.Immutable.ImmutableArray<Note>>());
        Assert.Contains(notes, n => n.Words == "Left lug is 3 mm thicker" && path.EndsWith($"{n.PartId}", StringComparison.Ordinal));
        await Expect(visit.Page.Locator("#quick-words")).ToHaveValueAsync("");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    [Truth(Grade.Published, "1 inch is 25.4 mm (ISO 31, international inch); WCAG 2.2: 1.4.4 and 1.4.10, nothing is lost or runs out of the page when the type is larger; 2.1.4, single keys can be switched off")]
    public async Task Wishes_change_what_is_shown_and_stay()
    {
        await using var visit = await chromium.Visit(van.Address, "settings", 360, 740);
        await visit.Page.Locator("#units").SelectOptionAsync("DecimalInches");
        // 84.14 / 25.4 = 3.3126; 0.06 / 25.4 = 0.0024.
        await Expect(visit.Page.Locator("[role=status]:has-text('For example')")).ToContainTextAsync("3.313 in ± 0.0024 in");
        await visit.Page.Locator("#type").SelectOptionAsync("larger");
        await visit.Page.Locator("#single-keys").UncheckAsync();
        await visit.Page.Locator("h1").FocusAsync();
        await visit.Page.Keyboard.PressAsync("?");
        // They are remembered when the app is started anew.
        await visit.Page.ReloadAsync();
        var wide = new List<string>();
        foreach (var (name, path) in new[] { ("measure", van.Sample("Dynamo mounting plate")), ("tree", van.Path()), ("samples", van.Path("samples")), ("orders", van.Path("orders")), ("part", van.Part("Dynamo mounting plate")), ("jobs", "planning/jobs"), ("settings", "settings") })
        {
            await visit.Walk(path);
            await Expect(visit.Page.Locator("main [role=status]:has-text('…')")).ToHaveCountAsync(0);
            Assert.Equal("24px", await visit.Page.EvaluateAsync<string>("getComputedStyle(document.documentElement).fontSize"));
            await visit.Picture($"large-type-{name}");
            if (await visit.TooWide() is { Length: > 0 } over) wide.Add($"{name}: {over}");
            if (name == "measure") await Expect(visit.Page.Locator("table.features .under", new() { HasTextString = " in" }).First).ToBeVisibleAsync();
        }
        Assert.Equal([], wide);
        await Expect(visit.Page.Locator("dialog[open]")).ToHaveCountAsync(0);
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "Chromium's print, read back by Poppler's pdftotext")]
    public async Task A_page_prints_as_a_clean_sheet()
    {
        await using var visit = await chromium.Visit(van.Address, van.Path("samples"), scheme: ColorScheme.Dark);
        await Expect(visit.Page.Locator("table.samples tbody")).Not.ToContainTextAsync("being looked at", new() { Timeout = 60_000 });
        var text = await Printed(visit, "samples");
        Assert.Contains("Samples", text);
        Assert.Contains("How it stands", text);
        Assert.DoesNotContain("Quick add", text);
        Assert.DoesNotContain("Planning office", text);
        Assert.DoesNotContain("http", text);
        await visit.Walk(van.Sample("Dynamo mounting plate") + "?sheet=drawing");
        await Expect(visit.Page.Locator(".sheet-paper svg").First).ToBeVisibleAsync();
        await Printed(visit, "drawing");
    }

    [Fact]
    [Truth(Grade.Property, "a picture that was drawn nearer shows less of the sheet, a fitted one all of it")]
    public async Task A_drawing_is_drawn_nearer_by_keys_buttons_and_two_fingers()
    {
        await using var visit = await chromium.Visit(van.Address, van.Sample("Dynamo mounting plate") + "?sheet=drawing");
        var svg = visit.Page.Locator(".sheet-paper svg").First;
        await Expect(svg).ToBeVisibleAsync();
        var whole = (await svg.GetAttributeAsync("viewBox"))!;
        await visit.Page.Locator(".sheet-paper").First.FocusAsync();
        await visit.Page.Keyboard.PressAsync("+");
        Assert.Equal(0.7, await Share(svg, whole), 6);
        var near = await svg.GetAttributeAsync("viewBox");
        await visit.Page.Keyboard.PressAsync("ArrowRight");
        Assert.NotEqual(near, await svg.GetAttributeAsync("viewBox"));
        await visit.Button("Fit").First.ClickAsync();
        Assert.Equal(whole.Split(' ').Select(double.Parse), (await svg.GetAttributeAsync("viewBox"))!.Split(' ').Select(double.Parse));
        // Two fingers 100 px apart, then 200: the half is seen.
        await visit.Page.Locator(".sheet-paper").First.EvaluateAsync("""
            e => {
              const box = e.querySelector("svg").getBoundingClientRect(), y = box.top + 100;
              const say = (type, id, x) => e.dispatchEvent(new PointerEvent(type, { pointerId: id, clientX: box.left + x, clientY: y, pointerType: "touch", bubbles: true }));
              e.setPointerCapture = () => {};
              say("pointerdown", 11, 100); say("pointerdown", 12, 200); say("pointermove", 12, 300);
              say("pointerup", 11, 100); say("pointerup", 12, 300);
            }
            """);
        Assert.Equal(0.5, await Share(svg, whole), 6);
        Assert.Empty(visit.Complaints);
    }

    static async Task<double> Share(ILocator svg, string whole) =>
        double.Parse((await svg.GetAttributeAsync("viewBox"))!.Split(' ')[2], System.Globalization.CultureInfo.InvariantCulture) / double.Parse(whole.Split(' ')[2], System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>The text of the page as Chromium prints it; the PDF is kept under artifacts/screens.</summary>
    static async Task<string> Printed(Visit visit, string name)
    {
        await visit.Picture($"before-print-{name}");
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "WitnessMark.slnx"))) folder = folder.Parent;
        var file = Path.Combine(folder!.FullName, "artifacts", "screens", $"print-{name}.pdf");
        await visit.Page.PdfAsync(new() { Path = file, PreferCSSPageSize = true });
        using var run = Process.Start(new ProcessStartInfo("pdftotext", ["-layout", file, "-"]) { RedirectStandardOutput = true })!;
        return await run.StandardOutput.ReadToEndAsync();
    }
}
