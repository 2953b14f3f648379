using WitnessMark.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Shell;

/// <summary>Every page and every sheet, with something on it, by day on a bench and by night on a phone: looked at by one person who walks through all of them.</summary>
public sealed class LookTests(Chromium chromium, FilledVan van, LookTests.Stroll stroll) : IClassFixture<FilledVan>, IClassFixture<LookTests.Stroll>
{
    /// <summary>Sheets of a sample: the part, the sheet, and what stands there when it has been worked out.</summary>
    static readonly (string Part, string Sheet, string Shown)[] OfSamples =
    [
        ("Headlamp bracket", "taking", ".taking"), ("Dynamo mounting plate", "photo", ".card"), ("Rear lamp bracket", "solid", ".headline"), ("Cylinder head stud", "made-to", "main"),
        ("Dynamo mounting plate", "intent", ".headline"), ("Dynamo mounting plate", "drawing", "main"), ("Dynamo mounting plate", "blank", "main"), ("Rear lamp bracket", "blank", ".sheet-paper"),
        ("Dynamo mounting plate", "shapes", "main"), ("Dynamo mounting plate", "card", "main"), ("Headlamp bracket", "return", ".points"),
    ];

    public static TheoryData<string> Pages => [.. Routes.All];

    public static TheoryData<int> SheetsOfSamples => [.. Enumerable.Range(0, OfSamples.Length)];

    [Theory]
    [MemberData(nameof(Pages))]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.0, 2.1 and 2.2 A and AA; Chromium's layout and its enforcement of the content policy")]
    public Task A_page_is_legible_keeps_its_width_and_breaks_no_policy(string route) =>
        Look(Routes.Name(route), Routes.Filled(route, van), route.EndsWith("/loans", StringComparison.Ordinal) ? "a:has-text('Not ready: 4 open')" : "h1");

    [Theory]
    [MemberData(nameof(SheetsOfSamples))]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.0, 2.1 and 2.2 A and AA; Chromium's layout and its enforcement of the content policy")]
    public Task A_sheet_of_a_sample_is_legible_keeps_its_width_and_breaks_no_policy(int n) =>
        Look($"sheet-{OfSamples[n].Sheet}-{OfSamples[n].Part.Replace(' ', '-').ToLowerInvariant()}", $"{van.Sample(OfSamples[n].Part)}?sheet={OfSamples[n].Sheet}", OfSamples[n].Shown);

    [Fact]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.0, 2.1 and 2.2 A and AA")]
    public async Task What_lies_over_a_page_is_legible_too()
    {
        await using var visit = await chromium.Visit(van.Address, van.Part("Dynamo mounting plate"));
        await Expect(visit.Page.Locator("#samples")).ToBeVisibleAsync();
        foreach (var (key, id, typed) in new[] { ("/", "finder", "bracket"), ("a", "quick-add", ""), ("?", "keys", "") })
        {
            await visit.Page.Locator("h1").FocusAsync();
            await visit.Page.Keyboard.PressAsync(key);
            await Expect(visit.Page.Locator($"dialog[open] #{id}-head")).ToBeVisibleAsync();
            await Expect(visit.Page.Locator("dialog[open] [role=status]:has-text('…')")).ToHaveCountAsync(0);
            if (typed.Length > 0) await visit.Page.Locator("#find-all").FillAsync(typed);
            await visit.Look($"over-{id}");
            await visit.Type("Escape");
            await Expect(visit.Page.Locator("dialog[open]")).ToHaveCountAsync(0);
        }
        Assert.Empty(visit.Complaints);
    }

    /// <param name="shown">Stands on the page when what takes long has been worked out.</param>
    async Task Look(string name, string path, string shown)
    {
        var visit = await stroll.To(chromium, van.Address, path);
        await Expect(visit.Page.Locator(shown).First).ToBeVisibleAsync(new() { Timeout = 300_000 });
        await Expect(visit.Page.Locator("main [role=status]:has-text('…')")).ToHaveCountAsync(0, new() { Timeout = 300_000 });
        await visit.Look(name);
    }

    /// <summary>One visit for all pages, begun with the first of them, and anew after a page that failed.</summary>
    public sealed class Stroll : IAsyncLifetime
    {
        Visit? _visit;

        public async Task<Visit> To(Chromium chromium, Uri address, string path)
        {
            if (_visit is { Complaints.Count: > 0 }) await DisposeAsync();
            if (_visit is null) _visit = await chromium.Visit(address, path);
            else await _visit.Walk(path);
            return _visit;
        }

        public ValueTask InitializeAsync() => default;

        public async ValueTask DisposeAsync()
        {
            if (_visit is not null) await _visit.DisposeAsync();
            _visit = null;
        }
    }
}
