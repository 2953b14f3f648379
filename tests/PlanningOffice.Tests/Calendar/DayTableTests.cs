using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Calendar;

public sealed class DayTableTests
{
    static readonly DateOnly Wednesday = new(2031, 3, 5);

    [Fact]
    [Truth(Grade.Property, "the mean of many futures is the expected hours; five standard errors")]
    public void Futures_agree_with_the_expected_hours()
    {
        var table = new DayTable(WorkCalendar.Usual, Wednesday, 365);
        var chance = new Chance(7);
        var (sum, square, n) = (0.0, 0.0, 4000);
        for (var f = 0; f < n; f++)
        {
            table.Draw(chance);
            sum += table.Cumulative[^1];
            square += table.Cumulative[^1] * table.Cumulative[^1];
        }
        var error = Math.Sqrt((square / n - sum / n * (sum / n)) / n);
        Assert.InRange(sum / n, WorkCalendar.Usual.HoursFrom(Wednesday, 365) - 5 * error, WorkCalendar.Usual.HoursFrom(Wednesday, 365) + 5 * error);
    }

    [Fact]
    [Truth(Grade.Property, "variance of the product of a Bernoulli and a lognormal of mean 1: (1 - p)(1 + cv²) - (1 - p)², by hand; weeks are independent")]
    public void A_week_varies_as_said()
    {
        var calendar = WorkCalendar.Usual with { Season = [.. Enumerable.Repeat(1.0, 12)], Week = [.. Enumerable.Repeat(new DayHours(1, 0), 7)], VanishChance = 0.2, WeekVariation = 0.5 };
        var table = new DayTable(calendar, Wednesday.AddDays(5), 7 * 100);
        var chance = new Chance(9);
        var (sum, square, n) = (0.0, 0.0, 0);
        for (var f = 0; f < 300; f++)
        {
            table.Draw(chance);
            for (var w = 6; w < table.Days; w += 7, n++)
            {
                var hours = (table.Cumulative[w] - (w > 6 ? table.Cumulative[w - 7] : 0)) / 7;
                (sum, square) = (sum + hours, square + hours * hours);
            }
        }
        Assert.Equal(0.8, sum / n, 0.02);
        Assert.Equal(0.8 * 1.25 - 0.64, square / n - sum / n * (sum / n), 0.02);
    }

    [Fact]
    [Truth(Grade.Property, "leave gives no hours and no helper, whatever is drawn; hours never fall; noisy hours are those by daylight")]
    public void Leave_is_exact()
    {
        var calendar = WorkCalendar.Usual with { Leave = [new(Wednesday, Wednesday.AddDays(13), "away")], HelperChance = [.. Enumerable.Repeat(1.0, 7)] };
        var table = new DayTable(calendar, Wednesday, 60);
        var chance = new Chance(2);
        for (var f = 0; f < 50; f++)
        {
            table.Draw(chance);
            Assert.Equal(0, table.Cumulative[13]);
            Assert.DoesNotContain(true, table.Helper[..14].ToArray());
            Assert.True(table.Helper[14]);
            for (var d = 1; d < 60; d++)
            {
                Assert.True(table.Cumulative[d] >= table.Cumulative[d - 1]);
                if (Wednesday.AddDays(d).DayOfWeek != DayOfWeek.Saturday) Assert.Equal(table.CumulativeNoisy[d - 1], table.CumulativeNoisy[d]);
            }
        }
    }

    [Fact]
    [Truth(Grade.Property, "the same seed with other hours, leave and helper gives the same weeks vanished and the same dry days: paired what-ifs")]
    public void Futures_stay_paired_when_the_calendar_changes()
    {
        var plain = new DayTable(WorkCalendar.Usual, Wednesday, 400);
        var other = new DayTable(WorkCalendar.Usual with
        {
            Week = [.. WorkCalendar.Usual.Week.Select(h => new DayHours(h.Daylight / 2, h.Evening / 2))],
            HelperChance = [.. Enumerable.Repeat(0.9, 7)],
            Leave = [new(Wednesday.AddDays(200), Wednesday.AddDays(220), "away")],
        }, Wednesday, 400);
        plain.Draw(new Chance(4));
        other.Draw(new Chance(4));
        Assert.Equal(plain.Dry.ToArray(), other.Dry.ToArray());
        for (var d = 0; d < 200; d++) Assert.Equal(plain.Cumulative[d] / 2, other.Cumulative[d], 1e-9);
    }

    [Fact]
    [Truth(Grade.Property, "bytes allocated by this thread while drawing")]
    public void Drawing_allocates_nothing()
    {
        var (table, chance) = (new DayTable(WorkCalendar.Usual, Wednesday, 1500), new Chance(1));
        table.Draw(chance);
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var f = 0; f < 100; f++) table.Draw(chance);
        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
    }
}
