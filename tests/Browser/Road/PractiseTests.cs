using System.Globalization;
using WitnessMark.FrontOffice.PractiseMeasuring;
using WitnessMark.Maths;
using WitnessMark.PrintRoom;
using WitnessMark.PrintRoom.Paper;
using WitnessMark.Tests;
using WitnessMark.Web.Tests;
using static Microsoft.Playwright.Assertions;

namespace WitnessMark.Browser.Road;

using PractiseMeasuring = WitnessMark.FrontOffice.PractiseMeasuring.PractiseMeasuring;

/// <summary>The guided first survey, measured off the very marks that are printed.</summary>
public sealed class PractiseTests(Chromium chromium, RunningHost running) : IClassFixture<RunningHost>
{
    const int Sheet = 17;

    [Fact]
    [Truth(Grade.SecondImplementation, "axe-core (Deque) rules for WCAG 2.0 to 2.2 A and AA; Chromium's content-policy enforcement")]
    public async Task A_sheet_is_measured_by_keys_left_and_taken_up_again_and_compared_with_the_truth()
    {
        await using var visit = await chromium.Visit(running.Host.Address, "practise");
        await visit.Write("#practise-number", $"{Sheet}");
        await Expect(visit.Page.Locator(".title-block")).ToContainTextAsync($"{Sheet}, A4");
        await visit.Look("first-practise-print");
        Assert.StartsWith("%PDF-", System.Text.Encoding.Latin1.GetString(await visit.Bytes("Practice sheet, PDF")));
        await visit.FollowLink("It lies before me: begin");

        var (print, wanted) = (new Print(Sheet), PractiseMeasuring.Wanted(Sheet));
        var chance = new Chance(3);
        foreach (var step in wanted)
        {
            await Expect(visit.Page.Locator("#step-words")).ToHaveTextAsync(step.Words);
            await Expect(visit.Page.Locator("#practise-value")).ToBeFocusedAsync();
            // The twelfth is read a millimetre too long.
            var value = print.Length(step) + 0.02 * chance.Normal() + (step.Number == 12 ? 1 : 0);
            await visit.Type(value.ToString("0.00", CultureInfo.InvariantCulture), "Enter");
            if (step.Number == 3)
            {
                await Expect(visit.Page.Locator("#step-words")).ToHaveTextAsync(wanted[3].Words);
                await visit.Page.GoBackAsync();
                await Expect(visit.Page.Locator(".step-card")).ToContainTextAsync("Read:");
                await visit.Page.GoForwardAsync();
            }
            if (step.Number != 13) continue;
            await Expect(visit.Page.Locator("#step-words")).ToHaveTextAsync(wanted[13].Words);
            await visit.Page.ReloadAsync();
            await Expect(visit.Page.Locator(".title-block")).ToContainTextAsync($"13 of {wanted.Length}");
            await visit.Look("first-practise-step");
        }
        await Expect(visit.Page.Locator(".title-block")).ToContainTextAsync($"{wanted.Length} of {wanted.Length}");
        await visit.Look("first-practise-held");
        await visit.PressButton("I have finished: show me the truth");
        await Expect(visit.Page.Locator("main")).ToContainTextAsync("That is misread.");
        await Expect(visit.Page.Locator("main")).ToContainTextAsync("Reading 12, ");
        await visit.Look("first-practise-truth");
        Assert.Empty(visit.Complaints);
        // Nothing of it has gone into the records.
        Assert.Equal("[]", await running.Host.Http.GetStringAsync("api/vehicles"));
    }

    [Fact]
    public async Task A_value_that_cannot_be_is_refused_and_a_reading_can_be_taken_back()
    {
        await using var visit = await chromium.Visit(running.Host.Address, "practise?at=1");
        await visit.Write("#practise-value", "ten");
        await visit.Type("Enter");
        await Expect(visit.Page.Locator("#practise-why")).ToContainTextAsync("ten");
        await visit.Write("#practise-value", "100.1");
        await visit.Type("Enter");
        await Expect(visit.Page.Locator(".title-block")).ToContainTextAsync("1 of ");
        await visit.FollowLink("Back");
        await visit.PressButton("Take back 100.1");
        await Expect(visit.Page.Locator(".title-block")).ToContainTextAsync("0 of ");
        Assert.Empty(visit.Complaints);
    }

    /// <summary>Takes lengths off the printed marks as a calliper would.</summary>
    sealed class Print
    {
        readonly Dictionary<string, (Vec2 At, double Radius)> _at = [];

        public Print(int number)
        {
            var marks = PracticeSheet.Draw(number, PaperSize.A4).Marks;
            var outline = marks.OfType<PathMark>().Single(m => m.Layer == Layers.Outline).Points;
            for (var i = 0; i < outline.Length; i++) _at[$"C{i + 1}"] = (outline[i], 0);
            foreach (var (hole, i) in marks.OfType<CircleMark>().Where(m => m.Layer == Layers.Holes).Select((m, i) => (m, i))) _at[$"H{i + 1}"] = (hole.Centre, hole.Radius);
        }

        public double Length(PracticeStep s) => s.Kind switch
        {
            PracticeReading.CheckLine => s.To == "4 in" ? 101.6 : 100,
            "diameter" => 2 * _at[s.From].Radius,
            "length along edge" => Apart($"C{s.From[1..]}", $"C{int.Parse(s.From[1..], CultureInfo.InvariantCulture) % 5 + 1}"),
            "centre distance" => Apart(s.From, s.To),
            "inside between holes" => Apart(s.From, s.To) - _at[s.From].Radius - _at[s.To].Radius,
            "outside over holes" => Apart(s.From, s.To) + _at[s.From].Radius + _at[s.To].Radius,
            _ => throw new InvalidOperationException(s.Kind),
        };

        double Apart(string a, string b) => _at[a].At.DistanceTo(_at[b].At);
    }
}
