using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice.Plans;

/// <summary>Days from a beginning, on which one person's expected hours are spent one after the other.</summary>
sealed class WorkClock(DateOnly from, Func<DateOnly, double> hoursOn, int longest)
{
    /// <summary>Hours; what sums of day fractions may be out by.</summary>
    const double Rounding = 1e-9;

    /// <summary>Days from the beginning; the fraction is the share of that day's hours already spent.</summary>
    public double Now { get; private set; }

    /// <param name="notBefore">Days from the beginning.</param>
    /// <returns>Start and end in days from the beginning.</returns>
    public (double Start, double End) Work(double notBefore, double hours)
    {
        var at = Math.Max(Now, notBefore);
        double? start = null;
        while (true)
        {
            if (at > longest)
                throw new RefusedException(Refusal.Of("hours to work", $"{from:yyyy-MM-dd}", "give a calendar with enough hours: the jobs are not over in twenty years"));
            var day = Math.Floor(at);
            var today = Math.Max(0, hoursOn(from.AddDays((int)day)));
            var left = today * (day + 1 - at);
            if (left > Rounding) start ??= at;
            if (left > Rounding && hours <= left + Rounding) return (start!.Value, Now = at + hours / today);
            hours -= left;
            at = day + 1;
        }
    }
}
