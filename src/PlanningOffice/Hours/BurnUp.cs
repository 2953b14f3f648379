using System.Collections.Immutable;
using WitnessMark.PlanningOffice.Futures;

namespace WitnessMark.PlanningOffice;

/// <param name="Hours">Worked in all by the end of the day.</param>
public readonly record struct BurnPoint(DateOnly Day, double Hours);

/// <summary>Hours worked so far and where the forecast says they will end; hours are own hours, all jobs together.</summary>
/// <param name="Worked">One point for each day worked, rising.</param>
/// <param name="Now">Today and the hours worked by it: where the fan opens.</param>
/// <param name="P10">End of the fan's lower edge: the finish and the whole hours that one future in ten stays within.</param>
public sealed record BurnUp(ImmutableArray<BurnPoint> Worked, BurnPoint Now, BurnPoint P10, BurnPoint P50, BurnPoint P90)
{
    /// <summary>
    /// The edges pair the quantiles of the finish with those of the hours, each taken by itself; between today and their ends
    /// they are to be drawn straight, which leave and seasons do not follow.
    /// </summary>
    /// <param name="standing">Entries begun after today's end count as today's.</param>
    public static BurnUp Of(IEnumerable<HoursEntry> standing, TimeZoneInfo zone, PlanForecast forecast)
    {
        var today = forecast.Today;
        var sum = 0.0;
        ImmutableArray<BurnPoint> worked =
        [
            .. from e in standing
               let day = LocalDay.Of(e.StartedAt, zone)
               group e.Minutes / 60 by day < today ? day : today into g
               orderby g.Key
               select new BurnPoint(g.Key, sum += g.Sum()),
        ];
        var (finish, hours) = (forecast.Finish, forecast.Hours);
        return new(worked, new(today, sum),
            new(finish.P10, sum + hours.P10.Value), new(finish.P50, sum + hours.P50.Value), new(finish.P90, sum + hours.P90.Value));
    }

    /// <summary>Hours on the three edges on a day from today on: straight to their ends, level behind them.</summary>
    public (double P10, double P50, double P90) At(DateOnly day)
    {
        return (On(P10), On(P50), On(P90));

        double On(BurnPoint end)
        {
            var (gone, whole) = ((double)day.DayNumber - Now.Day.DayNumber, (double)end.Day.DayNumber - Now.Day.DayNumber);
            return Now.Hours + (end.Hours - Now.Hours) * (whole > 0 ? Math.Clamp(gone / whole, 0, 1) : 1);
        }
    }
}
