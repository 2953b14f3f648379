using Microsoft.Playwright;
using WitnessMark.Stores;
using WitnessMark.Tests;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser;

/// <summary>What was meant: found, refused, and still refused after a reload.</summary>
public sealed class IntentTests(Chromium chromium, RunningHost running) : IClassFixture<RunningHost>
{
    HostProcess Host => running.Host;

    /// <summary>Four holes of 8 mm at the corners of a rectangle 60 by 40, each way read twice to a few hundredths.</summary>
    [Fact]
    [Truth(Grade.Property, "four holes of one size at a rectangle's corners: equal, square and of whole millimetres by construction")]
    public async Task Patterns_are_found_refused_and_stay_refused()
    {
        var bench = await Bench.Lay(Host.Http, "Plate with a pattern", Hole("H1", 0, 0), Hole("H2", 60, 0), Hole("H3", 60, 40), Hole("H4", 0, 40));
        await bench.Post(Host.Http,
        [
            bench.Reading("H1", "H2", "60.02"), bench.Reading("H2", "H3", "39.98"), bench.Reading("H3", "H4", "59.98"), bench.Reading("H4", "H1", "40.02"), bench.Reading("H1", "H3", "72.10"), bench.Reading("H2", "H4", "72.12"),
            .. new[] { "H1", "H2", "H3", "H4" }.Select((h, i) => bench.Reading(h, "", $"8.0{i % 3}", "diameter")),
        ]);
        await using var visit = await chromium.Visit(Host.Address, bench.Address);
        // A condition is marked in the table of features, and the plan is adjusted anew.
        var mark = visit.Page.GetByLabel("Condition of H4", new() { Exact = true });
        await mark.SelectOptionAsync("worn");
        await Expect(visit.Page.GetByLabel("How much of H4, mm")).ToHaveAttributeAsync("placeholder", "0.2");
        await mark.ScrollIntoViewIfNeededAsync();
        await visit.Look("worn");
        await mark.SelectOptionAsync("sound");

        await visit.Page.GetByRole(AriaRole.Link, new() { Name = "Intent", Exact = true }).ClickAsync();
        var findings = visit.Page.Locator(".findings li");
        await Expect(visit.Page.Locator(".running")).ToHaveCountAsync(0);
        await Expect(visit.Page.Locator("section[aria-label='Taken'] li").First).ToContainTextAsync("chi-square");
        await visit.Look("intent");
        var first = await visit.Page.Locator("section[aria-label='Taken'] li strong").First.InnerTextAsync();
        await findings.First.GetByRole(AriaRole.Button, new() { Name = $"Refuse: {first}", Exact = true }).ClickAsync();
        await Expect(visit.Page.Locator("section[aria-label='Refused by you'] li")).Not.ToHaveCountAsync(0);
        await visit.Page.WaitForTimeoutAsync(1500);
        await visit.Page.ReloadAsync();
        await Expect(visit.Page.Locator("section[aria-label='Refused by you'] li")).Not.ToHaveCountAsync(0);
        Assert.Empty(visit.Complaints);
    }

    static SketchedFeature Hole(string id, double x, double y) => new(id, "hole", "", "", x, y, null, null, null);
}
