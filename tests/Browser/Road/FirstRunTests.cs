using Microsoft.Playwright;
using WitnessMark.Tests;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Road;

/// <summary>What a person sees who has nothing yet.</summary>
public sealed class FirstRunTests(Chromium chromium)
{
    [Fact]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.0 to 2.2 A and AA; Chromium's content-policy enforcement")]
    public async Task An_empty_store_leads_to_a_vehicle_and_what_was_typed_survives_going_back()
    {
        await using var host = await HostProcess.Start();
        await using var visit = await chromium.Visit(host.Address, "");
        await Expect(visit.Page.Locator("#first-name")).ToBeVisibleAsync();
        await visit.Look("first-begin");
        await visit.PressButton("Go on");
        await Expect(visit.Page.Locator(".first .refusal")).ToContainTextAsync("vehicle name: nothing is given");
        await visit.Write("#first-name", "Shed van");
        await visit.Write("#first-year", "1931");
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("#first-step")).ToBeFocusedAsync();
        await visit.Reach("#first-kind");
        await visit.Type("Tractor");
        await Expect(visit.Page.Locator(".ticks")).ToContainTextAsync("Power take-off");
        await visit.Write("#first-own", "Saw bench");
        await visit.Look("first-systems");
        await visit.Page.GoBackAsync();
        await Expect(visit.Page.Locator("#first-name")).ToHaveValueAsync("Shed van");
        await visit.Page.GoForwardAsync();
        await Expect(visit.Page.Locator("#first-own")).ToHaveValueAsync("Saw bench");
        await visit.Page.ReloadAsync();
        await Expect(visit.Page.Locator("#first-own")).ToHaveValueAsync("Saw bench");
        await visit.PressButton("Go on");
        await visit.Write("#first-parts", "Saw bench:");
        await visit.Type("Enter", "Belt x 0");
        await visit.PressButton("Begin the vehicle");
        await Expect(visit.Page.Locator(".first .refusal")).ToContainTextAsync("line 2, quantity");
        await visit.Write("#first-parts", "Saw bench:");
        await visit.Type("Enter", "Belt x 2");
        await visit.Look("first-parts");
        await visit.PressButton("Begin the vehicle");
        await Expect(visit.Page.Locator("#first-done + p")).ToContainTextAsync("12 systems, 1 part");
        await visit.Look("first-begun");
        await visit.PressButton("Undo");
        await Expect(visit.Page.Locator("main")).ToContainTextAsync("it stands as before");
        await visit.FollowLink("Open Shed van");
        await Expect(visit.Page.Locator(".empty")).ToContainTextAsync("No part is listed yet");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.0 to 2.2 A and AA")]
    public async Task Every_empty_page_says_what_it_is_for()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http);
        await using var visit = await chromium.Visit(host.Address, $"vehicle/{bench.Vehicle}");
        foreach (var (page, path, words) in new[]
        {
            ("loans", "/loans", "Nothing is borrowed"), ("orders", "/orders", "Nothing is on order"), ("outwork", "/outwork", "Nothing has gone out"),
            ("places", "/places", "Nothing has a place yet"), ("tags", "/tags", "No tag is given out yet"), ("apart", "/apart", "Nothing yet"),
        })
        {
            await visit.Walk($"vehicle/{bench.Vehicle}{path}");
            await Expect(visit.Page.Locator("main")).ToContainTextAsync(words);
            await visit.Look($"first-empty-{page}");
        }
        foreach (var (page, path, words) in new[] { ("jobs", "planning/jobs", "No job is on the list"), ("odds", "planning", "Make jobs from the routes"), ("shop", "shop", "What stands in your shop?") })
        {
            await visit.Walk(path);
            await Expect(visit.Page.Locator("main")).ToContainTextAsync(words);
            await visit.Look($"first-empty-{page}");
        }
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task The_tour_goes_through_the_demonstration_van_and_remembers_its_place()
    {
        await using var host = await HostProcess.Start();
        await using var visit = await chromium.Visit(host.Address, "first");
        await visit.PressButton("Load it and take the tour");
        var tour = visit.Page.Locator(".tour");
        await Expect(tour).ToContainTextAsync("1 of 11 · The tree");
        await visit.Look("first-tour");
        for (var stop = 2; stop <= 11; stop++)
        {
            await visit.PressButton("Next");
            await Expect(tour).ToContainTextAsync($"{stop} of 11");
            await Expect(visit.Page.Locator("h1").First).ToBeVisibleAsync();
            await Expect(tour.GetByRole(AriaRole.Link)).ToHaveCountAsync(0);
            if (stop != 4) continue;
            await visit.Page.ReloadAsync();
            await Expect(tour).ToContainTextAsync("4 of 11");
            await visit.Picture("first-tour-4");
        }
        await visit.PressButton("Back");
        await Expect(tour).ToContainTextAsync("10 of 11");
        await visit.PressButton("End the tour");
        await Expect(tour).ToHaveCountAsync(0);
        Assert.Empty(visit.Complaints);
    }
}
