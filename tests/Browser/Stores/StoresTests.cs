using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using WitnessMark.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Stores;

/// <summary>The stores worked as a person works them, by keyboard where hands would be on the keys.</summary>
public sealed class StoresTests(Chromium chromium)
{
    [Fact]
    public async Task A_part_is_found_misspelt_and_several_are_changed_and_changed_back()
    {
        await using var shed = await Shed.Open();
        await using var visit = await chromium.Visit(shed.Address, shed.Path());
        await visit.Page.Locator("#find").FocusAsync();
        await visit.Type("dinamo plate");
        await Expect(visit.Page.Locator("a.part").First).ToContainTextAsync("Dynamo mounting plate");
        await Expect(visit.Page.Locator("#find-said")).ToContainTextAsync("found");

        await visit.Page.Locator("#find").FillAsync("");
        await visit.Button("Choose several").PressAsync("Enter");
        await visit.Page.Locator(".tick input").Nth(0).CheckAsync();
        await visit.Page.Locator(".tick input").Nth(1).CheckAsync();
        await visit.Page.Locator("#bulk-condition").FillAsync("seen by torch only");
        await visit.Button("Set on 2 of 2").PressAsync("Enter");
        await Expect(visit.Button("Undo")).ToBeVisibleAsync();
        await visit.Picture("stores-bulk");
        await Expect(visit.Page.Locator("a.part", new() { HasText = "seen by torch only" })).ToHaveCountAsync(2);
        await visit.Button("Undo").PressAsync("Enter");
        await Expect(visit.Page.GetByText("Taken back")).ToBeVisibleAsync();
        await Expect(visit.Page.Locator("a.part", new() { HasText = "seen by torch only" })).ToHaveCountAsync(0);
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    [Truth(Grade.Published, "RFC 4180, 2.5 to 2.7: quoted fields hold separators and line breaks")]
    public async Task A_pasted_list_is_looked_at_taken_in_and_taken_back()
    {
        await using var shed = await Shed.Open();
        await using var visit = await chromium.Visit(shed.Address, shed.Path("list"));
        await visit.Page.GetByText("Or paste it").ClickAsync();
        await visit.Page.Locator("#list-text").FillAsync("System;Part;Part No;Qty\nWings;\"Stay; front\nlong\";W-1;2\nWings;Bracket;W-2;none\nWings;Wing bolt;W-3;8\n");
        await visit.Button("Read what is pasted").PressAsync("Enter");
        await Expect(visit.Page.Locator("#list-separator")).ToHaveValueAsync(";");
        await Expect(visit.Page.Locator(".faults li")).ToHaveCountAsync(1);
        await Expect(visit.Page.Locator(".faults li")).ToContainTextAsync("line 4");
        await visit.Picture("stores-list-read");
        await visit.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Take in: 2 new") }).PressAsync("Enter");
        await Expect(visit.Button("Undo")).ToBeVisibleAsync();
        await Expect(visit.Page.Locator(".title-block")).ToContainTextAsync($"{shed.Van.File.Parts.Length + 2} parts");
        await visit.Button("Undo").PressAsync("Enter");
        await Expect(visit.Page.Locator(".title-block")).ToContainTextAsync($"{shed.Van.File.Parts.Length} parts");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task What_comes_off_gives_the_refit_order_what_is_missing_and_a_ring_in_words()
    {
        await using var shed = await Shed.Open();
        await using var visit = await chromium.Visit(shed.Address, shed.Path("apart"), 360, 740, touch: true);
        await Pick(visit, "#off-part", "Dynamo mounting plate");
        await visit.Page.Locator("#off-bag").FillAsync("B3");
        await visit.Page.Locator("#fastener-0-what").FillAsync("bolt");
        await visit.Page.Locator("#fastener-0-thread").FillAsync("5/16 BSF");
        await visit.Page.Locator("#fastener-0-wanted").FillAsync("4");
        await visit.Page.Locator("#fastener-0-here").FillAsync("3");
        await visit.Page.Locator("#off-pictures").SetInputFilesAsync(new FilePayload { Name = "plate.png", MimeType = "image/png", Buffer = Shed.Png });
        await Expect(visit.Page.Locator(".capture .pictures img")).ToHaveCountAsync(1);
        await visit.Button("Keep it").PressAsync("Enter");
        await Expect(visit.Page.Locator(".missing")).ToContainTextAsync("One of the four bolts 5/16 BSF of the Dynamo mounting plate is not here.");

        await Pick(visit, "#off-part", "Cylinder head stud");
        await visit.Button("Keep it").PressAsync("Enter");
        await Expect(visit.Page.Locator(".came-off > li")).ToHaveCountAsync(2);
        await visit.Picture("stores-apart-phone");

        await visit.Walk(shed.Path("refit"));
        await Expect(visit.Page.Locator(".stages > li")).ToHaveCountAsync(2);
        await Expect(visit.Page.Locator(".stages > li").First).ToContainTextAsync("Cylinder head stud");
        await visit.Page.GetByText("Add a reason").ClickAsync();
        await Pick(visit, "#precede-first", "Dynamo mounting plate");
        await Pick(visit, "#precede-then", "Cylinder head stud");
        await visit.Page.Locator("#precede-because").FillAsync("it is lined up first");
        await visit.Button("Add").PressAsync("Enter");
        await Expect(visit.Page.Locator(".refusal").First).ToContainTextAsync("No order serves");
        await visit.Picture("stores-refit-ring-phone");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task A_box_goes_out_counted_and_what_does_not_come_back_is_told()
    {
        await using var shed = await Shed.Open();
        await using var visit = await chromium.Visit(shed.Address, shed.Path("outwork"));
        await AddFirm(visit, "Brightside Platers");
        await visit.Page.GetByText("Pack a box").ClickAsync();
        await visit.Page.GetByLabel("Holds hardened or high-tensile steel").CheckAsync();
        await visit.Page.Locator("#box-what-0").FillAsync("wing bolts");
        await visit.Page.Locator("#box-count-0").FillAsync("12");
        await visit.Page.Locator("#box-finish-0").FillAsync("bright zinc");
        await visit.Button("Add").First.PressAsync("Enter");
        await Expect(visit.Page.Locator(".consignment")).ToContainTextAsync("0 of 12 are back");
        await visit.Page.GetByText("Cautions").ClickAsync();
        await Expect(visit.Page.Locator(".consignment")).ToContainTextAsync("Hydrogen embrittlement");
        await visit.Page.GetByText("Count what came back").ClickAsync();
        await visit.Page.GetByLabel("wing bolts, 12 out").FillAsync("11");
        await visit.Page.Locator(".consignment").GetByRole(AriaRole.Button, new() { Name = "Add", Exact = true }).PressAsync("Enter");
        await Expect(visit.Page.Locator(".consignment .refusal").First).ToContainTextAsync("Missing on return: 1 of 12 wing bolts");
        Assert.StartsWith("%PDF-", await Saved(visit, "List for the box, PDF"));
        await visit.Picture("stores-outwork");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task An_order_comes_in_parts_and_money_is_told_at_a_dated_rate()
    {
        await using var shed = await Shed.Open();
        await using var visit = await chromium.Visit(shed.Address, shed.Path("orders"));
        await AddFirm(visit, "Lathe Lane Bearings");
        await visit.Page.GetByText("Place an order", new() { Exact = true }).ClickAsync();
        await visit.Page.Locator("#order-currency").FillAsync("XYZ");
        await visit.Page.Locator("#order-what-0").FillAsync("hub bearing");
        await visit.Page.Locator("#order-quantity-0").FillAsync("4");
        await visit.Page.Locator("#order-each-0").FillAsync("20");
        await visit.Button("Add").First.PressAsync("Enter");
        await Expect(visit.Page.Locator(".refusal").First).ToContainTextAsync("XYZ");
        await visit.Page.Locator("#order-currency").FillAsync("USD");
        await visit.Button("Add").First.PressAsync("Enter");
        await Expect(visit.Page.Locator("article")).ToContainTextAsync("Nothing has come yet: 4 of 4 hub bearing");

        await visit.Page.GetByText("Write down a rate of exchange").ClickAsync();
        await visit.Page.Locator("#rate-from").FillAsync("USD");
        await visit.Page.Locator("#rate-rate").FillAsync("0.5");
        await visit.Page.Locator("#rate-on").FillAsync("2026-01-02");
        await visit.Page.Locator("#rate-source").FillAsync("bank statement");
        await visit.Page.Locator("details[open]", new() { Has = visit.Page.Locator("#rate-from") }).GetByRole(AriaRole.Button, new() { Name = "Add", Exact = true }).PressAsync("Enter");
        await Expect(visit.Page.Locator(".title-block")).ToContainTextAsync("2026-01-02");
        await Expect(visit.Page.Locator(".title-block")).ToContainTextAsync("40.00");

        await visit.Page.GetByText("Some of it came").ClickAsync();
        await visit.Page.Locator("article").GetByLabel("How many").FillAsync("3");
        await visit.Page.Locator("article").GetByRole(AriaRole.Button, new() { Name = "Add", Exact = true }).PressAsync("Enter");
        await Expect(visit.Page.Locator("article")).ToContainTextAsync("Part is here, still to come: 1 of 4 hub bearing");
        await visit.Picture("stores-orders");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    [Truth(Grade.SecondImplementation, "ZXing (Apache-2.0) reads from a rendered page what QRCoder (MIT) encoded")]
    public async Task A_printed_tag_opens_its_part_typed_and_from_a_picture()
    {
        await using var shed = await Shed.Open();
        await using var visit = await chromium.Visit(shed.Address, shed.Path("tags"));
        await visit.Page.Locator("#tag-find").FillAsync("dynamo mounting plate");
        await visit.Page.Locator(".tag-list input").First.CheckAsync();
        var pdf = await Bytes(visit, "Print 1 tag, PDF");
        Assert.StartsWith("%PDF-", Encoding.Latin1.GetString(pdf));
        await Expect(visit.Page.Locator(".tag-list .code").First).ToBeVisibleAsync();
        var code = await visit.Page.Locator(".tag-list .code").First.InnerTextAsync();
        await visit.Picture("stores-tags");

        await visit.Page.Locator("#tag-code").FillAsync(code.ToLowerInvariant());
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("h1")).ToContainTextAsync("Dynamo mounting plate");

        await visit.Walk(shed.Path("tags"));
        await visit.Page.Locator("#tag-picture").SetInputFilesAsync(new FilePayload { Name = "tag.png", MimeType = "image/png", Buffer = await Shed.Rendered(pdf) });
        await Expect(visit.Page.Locator("h1")).ToContainTextAsync("Dynamo mounting plate");

        await visit.Walk(shed.Path("tags"));
        await visit.Page.Locator("#tag-picture").SetInputFilesAsync(new FilePayload { Name = "none.png", MimeType = "image/png", Buffer = Shed.Png });
        await Expect(visit.Page.Locator(".refusal")).ToContainTextAsync("No code can be read");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task A_part_is_graded_put_away_and_its_route_decided_with_what_was_known()
    {
        await using var shed = await Shed.Open();
        await using var visit = await chromium.Visit(shed.Address, shed.Path("places"));
        await visit.Page.GetByText("Add a place").ClickAsync();
        await visit.Page.Locator("#place-label").FillAsync("Shelf C");
        await visit.Button("Add").PressAsync("Enter");
        await Expect(visit.Page.Locator(".places")).ToContainTextAsync("Shelf C");

        await visit.Walk(shed.Part("Dynamo mounting plate"));
        await visit.Page.GetByText("Grade it").ClickAsync();
        await visit.Page.Locator("#grade").SelectOptionAsync("Poor");
        await visit.Page.Locator("#grade-evidence").FillAsync("half of the lower edge is gone");
        await visit.Page.Locator("section", new() { Has = visit.Page.Locator("#condition") }).GetByRole(AriaRole.Button, new() { Name = "Add", Exact = true }).PressAsync("Enter");
        await Expect(visit.Page.Locator("section", new() { Has = visit.Page.Locator("#condition") })).ToContainTextAsync("half of the lower edge is gone");
        await visit.Page.Locator("#part-place").SelectOptionAsync(new SelectOptionValue { Label = "Shelf C" });
        await visit.Button("It is there now").PressAsync("Enter");
        await Expect(visit.Page.Locator("section", new() { Has = visit.Page.Locator("#place") })).ToContainTextAsync("Shelf C (put there");
        await Expect(visit.Page.Locator(".routes tbody tr")).ToHaveCountAsync(6);
        await visit.Page.Locator("#route-choice").SelectOptionAsync("Remake");
        await visit.Page.Locator("#route-reason").FillAsync("too little is left to weld to");
        await visit.Button("Decide").PressAsync("Enter");
        await visit.Page.GetByText(new Regex("^Earlier decisions")).ClickAsync();
        await Expect(visit.Page.Locator(".pre")).ToContainTextAsync("routes compared on");
        await visit.Picture("stores-part");
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task A_sample_that_has_gone_back_leaves_the_loans()
    {
        await using var shed = await Shed.Open();
        await using var visit = await chromium.Visit(shed.Address, shed.Path("loans"));
        await Expect(visit.Page.Locator("main")).ToContainTextAsync("readings missing");
        await visit.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("^Gone back:") }).First.PressAsync("Enter");
        await Expect(visit.Page.Locator("#back")).ToBeVisibleAsync();
        Assert.Empty(visit.Complaints);
    }

    [Fact]
    public async Task The_wants_list_is_handed_out_as_a_page_and_a_table()
    {
        await using var shed = await Shed.Open();
        await using var visit = await chromium.Visit(shed.Address, shed.Path("wants"));
        Assert.Contains("<!doctype html>", Encoding.UTF8.GetString(await Bytes(visit, "Wants list, HTML")));
        Assert.Contains("\"part\",\"hand\",\"quantity\"", Encoding.UTF8.GetString(await Bytes(visit, "Wants list, CSV")));
        Assert.Empty(visit.Complaints);
    }

    static async Task Pick(Visit visit, string field, string name)
    {
        // A page just opened still hands the focus to its heading: what is typed goes to the field by name.
        await visit.Page.Locator(field).FillAsync(name);
        await Expect(visit.Page.Locator($"{field}-0")).ToContainTextAsync(name);
        await visit.Page.Locator(field).PressAsync("Enter");
        await Expect(visit.Page.Locator(field)).ToHaveAttributeAsync("aria-expanded", "false");
    }

    static async Task AddFirm(Visit visit, string name)
    {
        await visit.Page.GetByText("Add a firm").ClickAsync();
        await visit.Page.Locator("#firm-name").FillAsync(name);
        await visit.Page.Locator("details[open]").GetByRole(AriaRole.Button, new() { Name = "Add", Exact = true }).PressAsync("Enter");
        await Expect(visit.Page.Locator("#firm-name")).ToHaveValueAsync("");
        await visit.Page.GetByText("Add a firm").ClickAsync();
    }

    static async Task<string> Saved(Visit visit, string button) => Encoding.Latin1.GetString(await Bytes(visit, button));

    static async Task<byte[]> Bytes(Visit visit, string button)
    {
        var download = await visit.Page.RunAndWaitForDownloadAsync(() => visit.Button(button).ClickAsync());
        await using var stream = await download.CreateReadStreamAsync();
        using var bytes = new MemoryStream();
        await stream.CopyToAsync(bytes);
        return bytes.ToArray();
    }
}
