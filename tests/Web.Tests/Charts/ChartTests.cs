using WitnessMark.Tests;
using WitnessMark.Web.Client.PlanningOffice.Charts;

namespace WitnessMark.Web.Tests.Charts;

public sealed class ChartTests
{
    static readonly DateOnly s_today = new(2026, 11, 25);

    static readonly BarRow[] s_bars =
    [
        new("Engine", s_today, s_today.AddDays(100), s_today.AddDays(160)), new("Brakes <rear & front>", s_today.AddDays(50), s_today.AddDays(150), s_today.AddDays(400)),
        new("A system with a name that is far longer than any phone has room for beside a bar", s_today.AddDays(200), s_today.AddDays(300), s_today.AddDays(301)),
    ];

    static readonly MarkRow[] s_marks = [new("Hear it run", s_today.AddDays(80), s_today.AddDays(120), s_today.AddDays(200), s_today.AddDays(90))];

    static readonly BandPoint[] s_band = [new(s_today, 0, 0, 0), new(s_today.AddDays(30), -100, 200, 300), new(s_today.AddDays(61), -300, 100, 500)];

    static Drawn Plan(double width) => new(PlanBars.Svg(new("Plan", "By system"), s_marks, s_bars, s_today, width));

    static IEnumerable<Drawn> Every(double width) =>
    [
        Plan(width),
        new(Bands.Fan(new("Hours", "Logged"), [(s_today.AddDays(-20), 3), (s_today.AddDays(-3), 12)], s_band, width)),
        new(Bands.Cash(new("Money", "By month"), s_band, (s_today.AddDays(20), s_today.AddDays(40), s_today.AddDays(55)), width)),
        new(Shares.Svg(new("Drivers", "Of the spread"), [("own pace", 0.4), ("lead time of the brake linings from far away", 0.1)], width)),
    ];

    [Theory]
    [InlineData(1000)]
    [InlineData(330)]
    [Truth(Grade.Property, "length on the page is proportional to days: one scale and one origin for every bar and whisker")]
    public void Bars_lie_where_the_days_say(double width)
    {
        var drawn = Plan(width).Bars();
        var perDay = (drawn[0].To - drawn[0].From) / 100;
        Assert.True(perDay > 0.3);
        for (var i = 0; i < s_bars.Length; i++)
        {
            Assert.Equal(drawn[0].From + perDay * (s_bars[i].Start.DayNumber - s_today.DayNumber), drawn[i].From, 0.05);
            Assert.Equal(drawn[0].From + perDay * (s_bars[i].End.DayNumber - s_today.DayNumber), drawn[i].To, 0.05);
        }
        var whiskers = Plan(width).Of("path", "line-ink").Select(Drawn.Points).Where(p => p.Count == 2 && p[0].Y == p[1].Y).ToList();
        Assert.Equal(4, whiskers.Count);
        Assert.Contains(whiskers, w => Math.Abs(w.Max(p => p.X) - (drawn[0].From + perDay * 400)) < 0.05);
        Assert.Equal(drawn[0].From + perDay * 90, Drawn.Points(Plan(width).Of("path", "line-warn").First())[0].X, 0.05);
    }

    [Fact]
    [Truth(Grade.Property, "bars of shares are proportional to them")]
    public void Shares_are_as_long_as_they_are_great()
    {
        var drawn = new Drawn(Shares.Svg(new("D", "d"), [("a", 0.4), ("b", 0.1)], 800)).Bars();
        Assert.Equal(4, (drawn[0].To - drawn[0].From) / (drawn[1].To - drawn[1].From), 0.01);
    }

    [Fact]
    [Truth(Grade.Property, "the axes are straight scales: points in proportion")]
    public void The_middle_line_and_the_dry_day_share_a_scale()
    {
        var cash = new Drawn(Bands.Cash(new("Money", "m"), s_band, (s_today.AddDays(20), s_today.AddDays(40), s_today.AddDays(55)), 900));
        var middle = Drawn.Points(cash.Of("path", "line-accent").Single());
        var perDay = (middle[2].X - middle[0].X) / 61;
        Assert.Equal(middle[0].X + 30 * perDay, middle[1].X, 0.05);
        Assert.Equal((middle[0].Y - middle[1].Y) / 2, middle[0].Y - middle[2].Y, 0.05);
        Assert.Equal(middle[0].X + 40 * perDay, Drawn.Points(cash.Of("path", "line-warn").Single())[0].X, 0.05);
        var dry = cash.Of("rect", "fill-warn-band").Single();
        Assert.Equal(middle[0].X + 20 * perDay, Drawn.Figure(dry, "x"), 0.05);
        Assert.Equal(35 * perDay, Drawn.Figure(dry, "width"), 0.05);
    }

    [Theory]
    [InlineData(1100)]
    [InlineData(320)]
    [Truth(Grade.Property, "no inline style; a title and a description; every line of text within the drawing, at the widths of a wide font")]
    public void Charts_break_no_content_policy_and_cut_no_word(double width)
    {
        foreach (var chart in Every(width))
        {
            Assert.DoesNotContain(chart.All, e => e.Attribute("style") is not null || e.Attribute("font-family") is not null || e.Name.LocalName == "style");
            Assert.NotEqual("", chart.Text("title"));
            Assert.NotEqual("", chart.Text("desc"));
            foreach (var text in chart.All.Where(e => e.Name.LocalName == "text"))
            {
                var (x, long_) = (Drawn.Figure(text, "x"), text.Value.Length * 0.56 * Drawn.Figure(text, "font-size"));
                var from = (string)text.Attribute("text-anchor")! switch { "start" => x, "end" => x - long_, _ => x - long_ / 2 };
                Assert.True(from >= -1 && from + long_ <= chart.Width + 1, $"\"{text.Value}\" from {from} to {from + long_} of {chart.Width}");
                Assert.InRange(Drawn.Figure(text, "y"), 5, chart.Height);
            }
        }
    }

    [Fact]
    [Truth(Grade.Property, "nothing to show is an empty sheet, not a fault")]
    public void Nothing_to_show_draws_an_empty_sheet()
    {
        Assert.Empty(new Drawn(PlanBars.Svg(new("Plan", "p"), [], [], s_today, 400)).Bars());
        Assert.Empty(new Drawn(Shares.Svg(new("D", "d"), [], 400)).Bars());
        Assert.Empty(new Drawn(Bands.Cash(new("M", "m"), [new(s_today, 0, 0, 0)], null, 400)).Bars());
    }
}
