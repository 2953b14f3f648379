using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Web.Client.PlanningOffice.Charts;

namespace WitnessMark.Web.Client.PlanningOffice.Log;

/// <summary>What the logged hours come to.</summary>
static class LogBook
{
    /// <summary>Futures of the calendar; P10 and P90 are then known to about a tenth of their gap.</summary>
    const int Futures = 400;

    /// <summary>Weeks that the burn-up looks ahead.</summary>
    const int Ahead = 13;

    /// <summary>Longest burn-up, days: five years.</summary>
    const int Longest = 1830;

    public static DateOnly Day(DateTimeOffset at) => DateOnly.FromDateTime(at.LocalDateTime);

    /// <summary>Hours logged by the end of each day on which any were, from nothing before the first of them up to today; empty when none were.</summary>
    public static ImmutableArray<(DateOnly On, double Hours)> Logged(HoursHistory history, DateOnly today)
    {
        var sum = 0.0;
        var days = history.Standing.GroupBy(e => Day(e.StartedAt)).OrderBy(g => g.Key).Select(g => (On: g.Key.AddDays(1), Hours: sum += g.Sum(e => e.Minutes) / 60)).ToList();
        return days.Count == 0 ? [] : [(days[0].On.AddDays(-1), 0), .. days, (today.AddDays(1), sum)];
    }

    /// <summary>What the calendar gives from the first entry on, week by week: P10, P50 and P90 of the hours worked by then.</summary>
    public static ImmutableArray<BandPoint> Given(WorkCalendar calendar, DateOnly first, DateOnly today)
    {
        var days = Math.Clamp(today.DayNumber - first.DayNumber + 7 * Ahead, 7, Longest);
        var (table, chance) = (new DayTable(calendar, first, days), new Chance(1));
        var drawn = Enumerable.Range(0, days / 7).Select(_ => new double[Futures]).ToArray();
        for (var f = 0; f < Futures; f++)
        {
            table.Draw(chance);
            for (var w = 0; w < drawn.Length; w++) drawn[w][f] = table.Cumulative[7 * w + 6];
        }
        return [new(first, 0, 0, 0), .. drawn.Select((hours, w) => Point(first.AddDays(7 * w + 7), hours))];
    }

    static BandPoint Point(DateOnly on, double[] hours)
    {
        Array.Sort(hours);
        return new(on, hours[Futures / 10], hours[Futures / 2], hours[Futures * 9 / 10]);
    }
}
