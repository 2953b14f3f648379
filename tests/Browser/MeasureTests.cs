using System.Text.RegularExpressions;
using Microsoft.Playwright;
using WitnessMark.Stores;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser;

/// <summary>The main road: from an empty sample to a true plan, by keyboard and by hand.</summary>
public sealed class MeasureTests(Chromium chromium, RunningHost running) : IClassFixture<RunningHost>
{
    HostProcess Host => running.Host;

    static readonly SketchedFeature[] Plate = [Hole("H1", 0, 0), Hole("H2", 60, 0), Hole("H3", 60, 40), Hole("H4", 0, 40)];

    [Fact]
    public async Task Readings_typed_by_keyboard_make_the_plan_true_and_a_misread_one_is_marked()
    {
        var bench = await Bench.Lay(Host.Http, "Plate by keyboard", Corner("C1", 2, -3), Corner("C2", 55, 0), Corner("C3", 63, 45), Corner("C4", -2, 38), Corner("C5", 28, 12));
        await using var visit = await chromium.Visit(Host.Address, bench.Address);
        await visit.Page.Locator("#from").FocusAsync();
        await Read(visit, "c1", "c2", "60.00");
        await Expect(visit.Page.Locator(".headline")).ToContainTextAsync("Not held yet");
        await Read(visit, "c2", "c3", "40");
        await Read(visit, "c3", "c4", "60,00 mm");
        await Read(visit, "c4", "c1", "1.5748 in");
        await Read(visit, "c1", "c3", "72.12");
        await Expect(visit.Page.Locator(".headline")).ToContainTextAsync("can still move");
        await Read(visit, "c2", "c4", "72.10");
        await Read(visit, "c5", "c1", "29.15");
        await Read(visit, "c5", "c2", "38.08");
        await Read(visit, "c5", "c4", "35.36");
        await Expect(visit.Page.Locator(".headline")).ToContainTextAsync("The plan is true");
        // 43.01 by construction: read a millimetre too long.
        await Read(visit, "c5", "c3", "44.01");
        await Expect(visit.Lines).ToHaveCountAsync(10);
        await Expect(visit.Page.Locator("table.lines tr.doubtful strong").First).ToHaveTextAsync("C5 – C3");
        await Expect(visit.Page.Locator("table.lines tr.doubtful")).ToHaveCountAsync(1);
        await Expect(visit.Page.Locator(".tie.doubtful line")).ToHaveCountAsync(1);
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        await visit.Picture("measure-misread");
        Assert.Empty(visit.Complaints);
        Assert.Equal(10, (await bench.Standing(Host.Http)).Length);
    }

    [Fact]
    public async Task What_cannot_be_understood_is_refused_in_place_and_nothing_is_kept()
    {
        var bench = await Bench.Lay(Host.Http, "Plate refused", Plate);
        await using var visit = await chromium.Visit(Host.Address, bench.Address);
        await visit.Page.Locator("#from").FocusAsync();
        await visit.Type("h1", "Enter", "h2", "Enter", "58 furlongs", "Enter");
        await Expect(visit.Page.Locator("#refusal")).ToContainTextAsync("58 furlongs");
        await Expect(visit.Page.Locator("#value")).ToBeFocusedAsync();
        Assert.Empty(await bench.Standing(Host.Http));
    }

    [Fact]
    public async Task A_suggested_reading_is_taken_into_the_row()
    {
        var bench = await Bench.Lay(Host.Http, "Plate loose", Plate);
        (await bench.Post(Host.Http, bench.Reading("H1", "H2", "58.2"), bench.Reading("H2", "H3", "41.0"), bench.Reading("H1", "H3", "71.2"),
            bench.Reading("H3", "H4", "58.2"))).EnsureSuccessStatusCode();
        await using var visit = await chromium.Visit(Host.Address, bench.Address);
        await Expect(visit.Page.Locator(".feature.loose .id")).ToHaveTextAsync(["H4"]);
        await Expect(visit.Page.Locator(".feature.loose animateTransform")).ToHaveCountAsync(1);
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Take it" }).First.ClickAsync();
        await Expect(visit.Page.Locator("#value")).ToBeFocusedAsync();
        var named = await visit.Page.Locator("#from").InputValueAsync() + await visit.Page.Locator("#to").InputValueAsync();
        Assert.Contains("H4", named);
        await visit.Picture("measure-loose");
    }

    [Fact]
    public async Task Little_motion_is_respected()
    {
        var bench = await Bench.Lay(Host.Http, "Plate still", Plate);
        (await bench.Post(Host.Http, bench.Reading("H1", "H2", "58.2"))).EnsureSuccessStatusCode();
        await using var visit = await chromium.Visit(Host.Address, "");
        await visit.Page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.Reduce });
        await visit.Go(bench.Address);
        await Expect(visit.Page.Locator(".way").First).ToBeVisibleAsync();
        await Expect(visit.Page.Locator("animateTransform")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task Features_are_placed_and_drawn_about_with_the_mouse_and_stay_after_a_reload()
    {
        var bench = await Bench.Lay(Host.Http, "Plate by hand");
        await using var visit = await chromium.Visit(Host.Address, bench.Address);
        await visit.Button("Edge").ClickAsync();
        await visit.Touch(0.2, 0.8);
        await visit.Touch(0.8, 0.8);
        await visit.Touch(0.8, 0.3);
        await visit.Button("Hole").ClickAsync();
        await visit.Touch(0.5, 0.5);
        await visit.Button("Slot").ClickAsync();
        await visit.Draw(0.3, 0.65, 0.45, 0.65);
        await visit.Button("Move").ClickAsync();
        var before = await visit.Page.Locator(".feature .id", new() { HasTextString = "H1" }).BoundingBoxAsync();
        await visit.Draw(0.5, 0.5, 0.6, 0.4);
        await visit.Page.WaitForTimeoutAsync(1500);
        await visit.Page.ReloadAsync();
        await Expect(visit.Page.Locator(".feature .id")).ToHaveTextAsync(["C1", "C2", "C3", "H1", "S1"]);
        await Expect(visit.Page.Locator("line.outline")).ToHaveCountAsync(2);
        Assert.NotNull(before);
        var sketch = (await System.Net.Http.Json.HttpClientJsonExtensions.GetFromJsonAsync(Host.Http, $"api/samples/{bench.Sample}", Web.Client.Wire.WireJson.Default.BenchFile))!.Sketch.Row;
        Assert.Equal(7, sketch.Features.Length);
        var slot = sketch.Features.Single(f => f.Id == "S1");
        Assert.InRange(slot.Length!.Value, 15, 60);
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task A_withdrawn_reading_no_longer_counts_and_can_be_put_back()
    {
        var bench = await Bench.Lay(Host.Http, "Plate undone", Plate);
        (await bench.Post(Host.Http, bench.Reading("H1", "H2", "58.2"))).EnsureSuccessStatusCode();
        await using var visit = await chromium.Visit(Host.Address, bench.Address);
        await visit.Page.GetByRole(AriaRole.Button, new() { NameRegex = new Regex("Withdraw reading 1") }).ClickAsync();
        await Expect(visit.Lines).ToHaveCountAsync(0);
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        Assert.Empty(await bench.Standing(Host.Http));
        await visit.Button("Put it back").ClickAsync();
        await Expect(visit.Lines).ToHaveCountAsync(1);
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        Assert.Equal("58.2", (await bench.Standing(Host.Http)).Single().Value);
    }

    /// <summary>One reading as a person types it: from, to, value, each ended with Enter.</summary>
    static Task Read(Visit visit, string from, string to, string value) => visit.Type(from, "Enter", to, "Enter", value, "Enter");

    static SketchedFeature Corner(string id, double x, double y) => new(id, "corner", "", "", x, y, null, null, null);

    static SketchedFeature Hole(string id, double x, double y) => new(id, "hole", "", "", x, y, null, null, null);
}
