using System.Net.Http.Json;
using Microsoft.Playwright;
using WitnessMark.PlanningOffice;
using WitnessMark.Web.Client.Wire;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Planning;

/// <summary>The planning pages worked as a person works them: mostly by keyboard, and what is kept is asked of the host.</summary>
public sealed class PlanUseTests(Chromium chromium, RunningHost running) : IClassFixture<RunningHost>
{
    HttpClient Http => running.Host.Http;

    [Fact]
    public async Task Routes_become_jobs_one_by_one_and_an_edit_can_be_undone()
    {
        var van = await DemoVan.Load(running.Host.Database);
        await using var visit = await chromium.Visit(running.Host.Address, "planning/jobs");
        await visit.Page.Locator("summary:has-text('One by one')").FocusAsync();
        await visit.Type("Enter");
        var first = visit.Page.Locator("button[aria-label^='Add: Radiator: take off']");
        await first.FocusAsync();
        await visit.Type("Enter");
        await visit.Page.Locator("summary:has-text('1 open of 1')").FocusAsync();
        await visit.Type("Enter");
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Edit Radiator: take off" }).FocusAsync();
        await visit.Type("Enter");
        await visit.Page.Locator("[aria-label^='Edit Radiator'] [role=group][aria-label='Hours'] input[id$='-high']").FillAsync("0.1");
        await visit.Button("Save").FocusAsync();
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("form .refusal")).ToContainTextAsync("hours");
        await visit.Page.Locator("[aria-label^='Edit Radiator'] [role=group][aria-label='Hours'] input[id$='-high']").FillAsync("9,5");
        await visit.Type("Enter");
        await Expect(visit.Button("Undo")).ToBeVisibleAsync();
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        Assert.Equal(9.5, (await Jobs(van.File.Vehicle.Id)).Single().Hours.High);
        await visit.Button("Undo").FocusAsync();
        await visit.Type("Enter");
        await Expect(visit.Button("Undo")).ToHaveCountAsync(0);
        await Expect(visit.Page.Locator("details.card .under:has-text('to 3 h')")).ToHaveCountAsync(1);
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        Assert.Equal(3, (await Jobs(van.File.Vehicle.Id)).Single().Hours.High);
        Assert.Empty(visit.Complaints);
    }

    async Task<IEnumerable<Job>> Jobs(Guid vehicle) =>
        (await Http.GetFromJsonAsync($"api/vehicles/{vehicle}/jobs", WireJson.Default.ImmutableArrayVersionedJob)).Select(j => j.Row);
}
