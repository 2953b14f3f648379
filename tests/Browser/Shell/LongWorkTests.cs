using Microsoft.Playwright;
using WitnessMark.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Shell;

/// <summary>Work that takes long, left alone and come back to.</summary>
public sealed class LongWorkTests(Chromium chromium, FilledVan van) : IClassFixture<FilledVan>
{
    [Fact]
    [Truth(Grade.Property, "a work goes on when its page is left, is stopped from another page, and its result is there when the page is opened again")]
    public async Task The_futures_run_on_elsewhere_are_stopped_from_there_and_wait_with_their_result()
    {
        await using var visit = await chromium.Visit(van.Address, "planning");
        var page = visit.Page;
        await Expect(page.Locator("main .running")).ToBeVisibleAsync();
        await Office(page, "Shop").ClickAsync();
        await Expect(page.Locator("h1")).ToHaveTextAsync("Shop");
        await Expect(page.Locator(".works .work-name")).ToHaveTextAsync("2000 futures of the plan");
        await page.GetByRole(AriaRole.Button, new() { Name = "Stop: 2000 futures of the plan" }).ClickAsync();
        await Expect(page.Locator(".works")).ToHaveCountAsync(0);
        await Office(page, "Planning office").ClickAsync();
        await visit.Button("Run the futures").ClickAsync();
        await Office(page, "Shop").ClickAsync();
        await Expect(page.Locator(".works .good")).ToHaveTextAsync("done", new() { Timeout = 300_000 });
        await visit.Picture("work-done-elsewhere");
        await page.Locator(".works").GetByRole(AriaRole.Link, new() { Name = "Open" }).ClickAsync();
        await Expect(page.Locator(".odds-words")).ToBeVisibleAsync();
        await Expect(page.Locator("main .running")).ToHaveCountAsync(0);
        await Expect(page.Locator(".works")).ToHaveCountAsync(0);
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    [Truth(Grade.Property, "what is taken back stands as before")]
    public async Task A_deed_is_taken_back_from_another_page()
    {
        await using var visit = await chromium.Visit(van.Address, van.Part("Cylinder head stud"));
        var page = visit.Page;
        await Expect(page.Locator("#place + p")).ToHaveTextAsync("Nobody has said where it is.");
        await page.Locator("#part-place").SelectOptionAsync(new SelectOptionValue { Label = "Shelf C, C3" });
        await visit.Button("It is there now").ClickAsync();
        await Expect(page.Locator("#place + p")).ToContainTextAsync("Shelf C, C3");
        await Office(page, "Shop").ClickAsync();
        await visit.Button("Take it back").ClickAsync();
        await Expect(page.Locator(".deed")).ToContainTextAsync("it stands as before");
        await visit.Walk(van.Part("Cylinder head stud"));
        await Expect(page.Locator("#place + p")).ToHaveTextAsync("Nobody has said where it is.");
        Assert.Empty(visit.Complaints);
    }

    static ILocator Office(IPage page, string name) => page.Locator(".offices a", new() { HasTextString = name });
}
