using System.Net.Http.Json;
using Microsoft.Playwright;
using WitnessMark.PlanningOffice;
using WitnessMark.Web.Client.Wire;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Offline;

/// <summary>Decisions of the tree and of the plan, made with no network.</summary>
public sealed class DecideTests(Chromium chromium)
{
    const string IsKept = "async () => { await navigator.serviceWorker.ready; return !!navigator.serviceWorker.controller; }";

    [Fact]
    public async Task A_part_renamed_and_a_job_changed_with_no_network_stand_with_the_host_once_when_it_is_back()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http);
        var job = Job.Plain(Guid.NewGuid(), bench.Vehicle, null, bench.Part, "Make the floor plate", WorkKind.Make, new(1, 2, 4), Cost.None("GBP"));
        using (var put = await host.Http.PutAsync($"api/jobs/{job.Id}", JsonContent.Create(new(job, 0), WireJson.Default.SavingJob))) put.EnsureSuccessStatusCode();
        await using var visit = await chromium.Visit(host.Address, $"vehicle/{bench.Vehicle}", 360, 740, worker: true);
        await visit.Page.WaitForFunctionAsync(IsKept, null, new() { Timeout = 180_000 });
        await visit.Button("Take along Hartle van").ClickAsync();
        await Expect(visit.Page.GetByText("All of it lies on this device.")).ToBeVisibleAsync(new() { Timeout = 120_000 });
        await visit.Look("offline-along");
        await visit.Browser.SetOfflineAsync(true);

        var part = $"vehicle/{bench.Vehicle}/part/{bench.Part}";
        await visit.Go(part);
        await visit.Page.GetByText("Change its name, reference").ClickAsync();
        await visit.Page.Locator("#edit-name").FillAsync("Floor plate, near side");
        await visit.Page.Locator("#edit-quantity").FillAsync("2");
        await visit.Look("offline-part-edit");
        await visit.Page.Locator("#edit-quantity").PressAsync("Enter");
        await Expect(visit.Page.Locator("h1")).ToHaveTextAsync("Floor plate, near side");
        await Expect(visit.Kept).ToContainTextAsync("1 kept here");

        await visit.Go("planning/jobs");
        await visit.Page.Locator("summary:has-text('1 open of 1')").ClickAsync();
        await visit.Page.GetByRole(AriaRole.Button, new() { Name = "Edit Make the floor plate" }).ClickAsync();
        await visit.Page.Locator($"#job-{job.Id:N}-hours-high").FillAsync("9");
        await visit.Page.Locator($"#job-{job.Id:N}-hours-high").PressAsync("Enter");
        await Expect(visit.Page.Locator(".under:has-text('to 9 h')")).ToHaveCountAsync(1);
        await Expect(visit.Kept).ToContainTextAsync("2 kept here");
        await visit.Go("waiting");
        await visit.Look("offline-decided");
        // Seen so after a reload too, and on other pages.
        await visit.Go($"vehicle/{bench.Vehicle}");
        await Expect(visit.Page.GetByText("Floor plate, near side").First).ToBeVisibleAsync();

        await visit.Browser.SetOfflineAsync(false);
        await Expect(visit.Kept).ToHaveTextAsync("All kept", new() { Timeout = 60_000 });
        var tree = (await host.Http.GetFromJsonAsync($"api/vehicles/{bench.Vehicle}", WireJson.Default.VehicleTree))!;
        var standing = Assert.Single(tree.Parts);
        Assert.Equal(("Floor plate, near side", 2, 2), (standing.Row.Name, standing.Row.Quantity, standing.Version));
        var changed = Assert.Single(await host.Http.GetFromJsonAsync($"api/vehicles/{bench.Vehicle}/jobs", WireJson.Default.ImmutableArrayVersionedJob));
        Assert.Equal((9, 2), (changed.Row.Hours.High, changed.Version));
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task A_part_changed_on_two_devices_stands_side_by_side_and_the_calendar_is_taken_back_by_a_key()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http);
        await using var visit = await chromium.Visit(host.Address, $"vehicle/{bench.Vehicle}/part/{bench.Part}", 360, 740);
        await visit.Page.GetByText("Change its name, reference").ClickAsync();
        await visit.Page.Locator("#edit-name").FillAsync("Floor plate, mine");
        var standing = (await host.Http.GetFromJsonAsync($"api/vehicles/{bench.Vehicle}", WireJson.Default.VehicleTree))!.Parts[0];
        using (var put = await host.Http.PutAsync($"api/parts/{bench.Part}", JsonContent.Create(new(standing.Row with { Name = "Floor plate, theirs" }, 1), WireJson.Default.SavingPart))) put.EnsureSuccessStatusCode();
        await visit.Page.Locator("#edit-name").PressAsync("Enter");
        await Expect(visit.Kept).ToHaveTextAsync("1 needs you");
        await visit.Go("waiting");
        await Expect(visit.Page.Locator(".clash .mine")).ToHaveTextAsync("Floor plate, mine");
        await Expect(visit.Page.Locator(".clash .theirs")).ToHaveTextAsync("Floor plate, theirs");
        await visit.Look("offline-clash-part");
        await visit.Button("Keep mine").ClickAsync();
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        Assert.Equal("Floor plate, mine", (await host.Http.GetFromJsonAsync($"api/vehicles/{bench.Vehicle}", WireJson.Default.VehicleTree))!.Parts[0].Row.Name);

        await visit.Go("planning/means");
        await visit.Page.Locator("#evening-2").FillAsync("4");
        await visit.Page.Locator("#evening-2").PressAsync("Enter");
        await Expect(visit.Page.Locator(".deed")).ToContainTextAsync("Calendar saved");
        await visit.Picture("offline-taken-back");
        await visit.Page.Locator("h1").FocusAsync();
        await visit.Page.Keyboard.PressAsync("Control+z");
        await Expect(visit.Page.Locator(".deed")).ToContainTextAsync("Taken back");
        await Expect(visit.Page.Locator("#evening-2")).ToHaveValueAsync("2");
        await Expect(visit.Kept).ToHaveTextAsync("All kept");
        Assert.Equal((2, 2), (await host.Http.GetFromJsonAsync("api/calendar", DeskJson.Default.VersionedWorkCalendar)) is var c ? ((int)c.Row.Week[2].Evening, c.Version) : default);
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task A_wrong_clock_is_told_on_every_page()
    {
        await using var host = await HostProcess.Start();
        await using var visit = await chromium.Visit(host.Address, "", 360, 740, before: "{ const now = Date.now; Date.now = () => now() + 3 * 3600_000; }");
        await Expect(visit.Page.Locator(".clock-wrong")).ToContainTextAsync("3 hours ahead");
        await visit.Look("offline-clock");
    }
}
