using System.Net.Http.Json;
using Microsoft.Playwright;
using WitnessMark.PlanningOffice;
using WitnessMark.Web.Client.Wire;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Planning;

/// <summary>A whole plan in hand: the clock, the odds, the what-ifs and the order.</summary>
public sealed class PlanWorkTests(Chromium chromium, RunningHost running) : IClassFixture<RunningHost>
{
    HttpClient Http => running.Host.Http;

    [Fact]
    public async Task The_plan_is_worked_from_the_clock_to_the_odds()
    {
        var van = (await PlannedVan.Load(running.Host.Database)).File.Vehicle.Id;
        await using var visit = await chromium.Visit(running.Host.Address, "planning/next");
        await Clock(visit, van);
        await Calendar(visit);
        await WhatIf(visit);
        await Order(visit);
        await Odds(visit);
        Assert.Empty(visit.Complaints);
    }

    async Task Clock(Visit visit, Guid van)
    {
        await visit.Page.Locator("button[aria-label^='Start the clock on']").First.FocusAsync();
        await visit.Type("Enter");
        await visit.Button("Stop").FocusAsync();
        await visit.Picture("plan-clock-running");
        await visit.Type("Enter");
        await Expect(visit.Page.Locator(".ticking")).ToHaveCountAsync(0);
        await visit.Page.GetByLabel("Job", new() { Exact = true }).SelectOptionAsync(new SelectOptionValue { Index = 1 });
        await visit.Page.GetByLabel("Or hours done").FillAsync("30");
        await visit.Button("Log them").FocusAsync();
        await visit.Type("Enter");
        await Expect(visit.Page.Locator(".refusal")).ToContainTextAsync("30");
        await visit.Page.GetByLabel("Or hours done").FillAsync("2,5");
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("ul.job-list > li")).ToHaveCountAsync(2);
        await visit.Page.Locator("button[aria-label^='Mend']").First.ClickAsync();
        await visit.Page.GetByLabel("Hours", new() { Exact = true }).FillAsync("3");
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("ul.job-list .under:has-text('3 h')")).ToHaveCountAsync(1);
        await visit.WholePicture("plan-hours-logged");
        var history = (await Http.GetFromJsonAsync($"api/vehicles/{van}/hours", DeskJson.Of<HoursHistory>()))!;
        Assert.Equal((2, 3, 1), (history.Standing.Count, history.Entries.Count, history.Withdrawals.Count));
        Assert.Contains(history.Standing, e => e.Minutes == 180);
        Assert.Empty(history.Open);
    }

    async Task Calendar(Visit visit)
    {
        await visit.Walk("planning/means");
        await visit.Page.Locator("#day-6").FillAsync("8");
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("[aria-label='Your calendar'] [role=status]")).ToHaveTextAsync("Saved");
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        Assert.Equal(8, (await Http.GetFromJsonAsync("api/calendar", DeskJson.Default.VersionedWorkCalendar)).Row.Week[6].Daylight);
        await visit.Page.Locator("#vanish").FillAsync("120");
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("[aria-label='Your calendar'] .refusal")).ToContainTextAsync("vanishes");
    }

    static async Task WhatIf(Visit visit)
    {
        await visit.Walk("planning/what-if");
        await visit.Page.Locator("#amount").FillAsync("4");
        await visit.Type("Enter");
        var finish = visit.Page.Locator("td[data-of='Finish, days']").First;
        await Expect(finish).ToContainTextAsync("-", new() { Timeout = 120_000 });
        await visit.WholePicture("plan-what-if-answered");
    }

    static async Task Order(Visit visit)
    {
        await visit.Walk("planning/order");
        await visit.Button("Put in order").FocusAsync();
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("table.odds-table tbody tr").First).ToBeVisibleAsync();
        await visit.Button("Put in order").FocusAsync();
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("[role=status]:has-text('No job has moved')")).ToHaveCountAsync(1);
        await visit.Picture("plan-order-standing");
    }

    /// <summary>Stopped at once, run again, and the same again: one seed, one answer.</summary>
    static async Task Odds(Visit visit)
    {
        await visit.Walk("planning");
        await visit.Button("Stop").FocusAsync();
        await visit.Type("Enter");
        await visit.Button("Run the futures").FocusAsync();
        await visit.Type("Enter");
        await visit.Page.Locator(".odds-words").WaitForAsync(new() { Timeout = 120_000 });
        var first = await visit.Page.Locator("table.forecast").InnerTextAsync();
        await visit.Go("planning");
        await visit.Page.Locator(".odds-words").WaitForAsync(new() { Timeout = 120_000 });
        Assert.Equal(first, await visit.Page.Locator("table.forecast").InnerTextAsync());
    }
}
