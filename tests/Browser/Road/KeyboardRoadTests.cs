using System.Text;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Road;

/// <summary>From an empty store to a job on the plan, without a mouse.</summary>
public sealed class KeyboardRoadTests(Chromium chromium)
{
    [Fact]
    public async Task A_new_vehicle_becomes_a_drawing_and_a_job_by_keys_alone()
    {
        await using var host = await HostProcess.Start();
        await using var visit = await chromium.Visit(host.Address, "");
        await Begin(visit);
        await visit.FollowLink("Open Shed van");
        await visit.FollowLink("Stay plate", exact: false);
        await visit.Press(visit.Page.Locator("summary", new() { HasTextString = "Add a sample" }));
        await visit.Write("#sample-title", "Old stay plate");
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("h1")).ToContainTextAsync("Old stay plate");
        await Sketch(visit);
        await Measure(visit);
        await visit.Picture("first-road-measured");

        await visit.FollowLink("Drawing");
        Assert.StartsWith("%PDF-", Encoding.Latin1.GetString(await visit.Bytes("Drawing, PDF")));
        await visit.FollowLink("Blank");
        await Expect(visit.Page.Locator("#bracket")).ToBeVisibleAsync();
        await visit.PressButton("Begin with an angle");
        Assert.Contains("BENDS", Encoding.Latin1.GetString(await visit.Bytes("Blank for the cutter, DXF")));

        await visit.FollowLink("Job card");
        await visit.Write("#wish-material", "DC01");
        await visit.Type("Enter");
        await visit.PressButton("Put it on the list");
        await visit.FollowLink("See the forecast");
        await Expect(visit.Page.Locator("h1")).ToContainTextAsync("Odds");
        await visit.FollowLink("Jobs");
        await visit.Press(visit.Page.Locator("details.card > summary"));
        await Expect(visit.Page.Locator(".job-head").First).ToBeVisibleAsync();
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task Every_kind_of_feature_is_placed_by_keys_and_by_figures()
    {
        await using var host = await HostProcess.Start();
        var bench = await Bench.Lay(host.Http, "Placed by keys");
        await using var visit = await chromium.Visit(host.Address, bench.Address);
        await visit.Reach("#paper");
        await visit.Type("s", "Enter");
        await visit.Times("Shift+ArrowRight", 2);
        await visit.Type("Enter", "a");
        await visit.Times("Shift+ArrowUp", 2);
        await visit.Type("Enter");
        await visit.Times("Shift+ArrowRight", 1);
        await visit.Type("Enter", "c");
        await visit.Times("Shift+ArrowUp", 1);
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("table.features tbody tr")).ToHaveCountAsync(3);
        await Expect(visit.Page.Locator(".paper [role=status]")).ToContainTextAsync("C1 placed");

        await visit.Press(visit.Page.Locator("summary", new() { HasTextString = "Place by figures" }));
        await visit.Write("#place-x", "80");
        await visit.Write("#place-y", "5");
        await visit.Type("Enter");
        await Expect(visit.Page.Locator(".place-form [role=status]")).ToHaveTextAsync("C2 is placed.");
        await visit.Reach("#place-kind");
        await visit.Type("Ed");
        await visit.Reach("#place-from");
        await visit.Type("C1");
        await visit.Reach("#place-to");
        await visit.Type("C2");
        await visit.PressButton("Place it");
        await Expect(visit.Page.Locator("table.features tbody")).ToContainTextAsync("edge C1 – C2");
        await visit.Write("#place-kind", "Ho");
        await visit.Write("#place-x", "not a number");
        await visit.Type("Enter");
        await Expect(visit.Page.Locator(".place-form .refusal")).ToContainTextAsync("not a number");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task The_plan_is_told_in_words_and_what_a_reading_changed_is_announced()
    {
        await using var host = await HostProcess.Start();
        var van = await DemoVan.Load(host.Database);
        await using var visit = await chromium.Visit(host.Address, DemoVan.Address(van, "Dynamo mounting plate"));
        await visit.Press(visit.Page.Locator("summary", new() { HasTextString = "The plan in words" }));
        await Expect(visit.Page.Locator(".plan-words")).ToContainTextAsync("Doubtful readings");
        await Expect(visit.Page.Locator(".plan-words")).ToContainTextAsync("Read it again.");
        await Expect(visit.Page.Locator("[data-said=plan]")).Not.ToBeEmptyAsync();
        await visit.Whole("first-plan-words");
        await visit.Look("first-plan-words");
    }

    static async Task Begin(Visit visit)
    {
        await visit.Write("#first-name", "Shed van");
        await visit.Type("Enter");
        await visit.PressButton("Go on");
        await visit.Write("#first-parts", "Body:");
        await visit.Type("Enter", "Stay plate LH");
        await visit.PressButton("Begin the vehicle");
        await Expect(visit.Page.Locator("#first-done + p")).ToContainTextAsync("1 part");
    }

    /// <summary>An outline of four corners and a hole in it.</summary>
    static async Task Sketch(Visit visit)
    {
        await visit.Reach("#paper");
        await visit.Type("e", "Enter");
        foreach (var (key, times) in new[] { ("ArrowRight", 4), ("ArrowUp", 2), ("ArrowLeft", 4), ("ArrowDown", 2) })
        {
            await visit.Times($"Shift+{key}", times);
            await visit.Type("Enter");
        }
        await Expect(visit.Page.Locator("table.features tbody tr")).ToHaveCountAsync(8);
        await visit.Type("h");
        await visit.Times("Shift+ArrowRight", 1);
        await visit.Times("Shift+ArrowUp", 1);
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("table.features tbody")).ToContainTextAsync("H1");
    }

    /// <summary>A plate of 80 by 50 mm with a hole of 12 mm at 30, 20, read with a few readings to spare.</summary>
    static async Task Measure(Visit visit)
    {
        await visit.Reach("#from");
        foreach (var (from, to, value) in new[]
        {
            ("c1", "c2", "80.00"), ("c2", "c3", "50.02"), ("c3", "c4", "79.98"), ("c4", "c1", "50.00"), ("c1", "c3", "94.35"), ("c2", "c4", "94.33"),
            ("c1", "h1", "36.06"), ("c2", "h1", "53.85"), ("c3", "h1", "58.32"),
        })
        {
            await Expect(visit.Page.Locator("#from")).ToBeFocusedAsync();
            await visit.Type(from, "Enter", to, "Enter", value, "Enter");
        }
        await visit.Page.Keyboard.PressAsync("Shift+Tab");
        await Expect(visit.Page.Locator("#kind")).ToBeFocusedAsync();
        await visit.Page.Keyboard.PressAsync("Control+a");
        await visit.Type("diameter", "Enter", "h1", "Enter", "12.02", "Enter");
        await Expect(visit.Page.Locator(".verdict-card .headline")).ToContainTextAsync("The plan is true");
        await Expect(visit.Lines).ToHaveCountAsync(10);
    }
}
