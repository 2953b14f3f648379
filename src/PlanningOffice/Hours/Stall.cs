using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice;

/// <summary>A small job that is ready now.</summary>
/// <param name="Hours">Own hours it is likely to take.</param>
public readonly record struct SmallWin(Guid JobId, string Title, double Hours);

/// <summary>Weeks went by without an hour logged, though the calendar had hours in them.</summary>
/// <param name="Weeks">Weeks of working time passed; leave and idle seasons do not count.</param>
/// <param name="Offer">The shortest of the jobs that are ready; null when there is none.</param>
public sealed record Stall(int Weeks, SmallWin? Offer, string Words)
{
    /// <summary>Quiet weeks before a word is said (common practice: two may be weather or family).</summary>
    public const int Quiet = 3;

    /// <summary>Null while the work goes on, or when nothing was ever logged.</summary>
    /// <param name="ready">Jobs that could be done now, in any order.</param>
    public static Stall? Of(IEnumerable<HoursEntry> standing, TimeZoneInfo zone, WorkCalendar calendar, DateOnly today, ImmutableArray<SmallWin> ready)
    {
        var days = standing.Select(e => LocalDay.Of(e.StartedAt, zone)).ToList();
        if (days.Count == 0) return null;
        var last = days.Max();
        var weeks = QuietWeeks(calendar, last, today);
        if (weeks < Quiet) return null;
        SmallWin? offer = ready.IsDefaultOrEmpty ? null : ready.OrderBy(w => w.Hours).ThenBy(w => w.Title, StringComparer.Ordinal).First();
        return new(weeks, offer, Told(weeks, last, offer));
    }

    // Days after the last one worked, those away and those of an idle season left out.
    static int QuietWeeks(WorkCalendar calendar, DateOnly last, DateOnly today) =>
        calendar.Week.All(d => d.Total <= 0) ? 0
        : Enumerable.Range(last.DayNumber + 1, Math.Max(0, today.DayNumber - last.DayNumber)).Select(DateOnly.FromDayNumber)
            .Count(d => !calendar.Away(d) && calendar.Season[d.Month - 1] > 0) / 7;

    static string Told(int weeks, DateOnly last, SmallWin? offer)
    {
        var gone = FormattableString.Invariant($"Nothing has been logged since {last:yyyy-MM-dd}; {weeks} weeks like that happen to every restoration, and all that was done still stands.");
        return offer is { } win
            ? FormattableString.Invariant($"{gone} \"{win.Title}\" is ready and takes about {win.Hours:0.#} h: a good way back in.")
            : $"{gone} No small job is ready: half an hour with the list, to free one, is a good way back in.";
    }
}
