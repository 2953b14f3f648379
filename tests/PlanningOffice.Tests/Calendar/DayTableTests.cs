using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests;

public sealed class DayTableTests
{
    [Fact]
    [Truth(Grade.Property, "the mean of many futures is the expected hours; five standard errors")]
    public void Futures_agree_with_the_expected_hours()
    {
        var start = new DateOnly(2031, 3, 5);
        var table = new DayTable(WorkCalendar.Usual, start, 365);
        var chance = new Chance(7);
        var (sum, square, n) = (0.0, 0.0, 4000);
        for (var f = 0; f < n; f++)
        {
            table.Draw(chance);
            sum += table.Cumulative[^1];
            square += table.Cumulative[^1] * table.Cumulative[^1];
        }
        var error = Math.Sqrt((square / n - sum / n * (sum / n)) / n);
        Assert.InRange(sum / n, WorkCalendar.Usual.HoursFrom(start, 365) - 5 * error, WorkCalendar.Usual.HoursFrom(start, 365) + 5 * error);
    }
}
