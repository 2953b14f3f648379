using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice;

/// <summary>Starting and stopping by a tap, and what to do when the stop was forgotten.</summary>
public static class Clock
{
    /// <summary>Hours of a spell of work on a day that the calendar leaves free (common practice).</summary>
    public const double UsualSpell = 2;

    /// <summary>The entry that closes a start.</summary>
    public static Parsed<HoursEntry> Stop(Started open, Guid id, DateTimeOffset at, string note, string device)
    {
        if (at <= open.At) return Refusal.Of("stop", $"{at:yyyy-MM-dd HH:mm}", $"it must come after the start, {open.At:yyyy-MM-dd HH:mm}");
        var minutes = (at - open.At).TotalMinutes;
        if (minutes > HoursCheck.LongestMinutes)
            return Refusal.Of("stop", $"{at:yyyy-MM-dd HH:mm}", $"the clock has run since {open.At:yyyy-MM-dd HH:mm}; say when the work ended, at most 24 hours after the start");
        // A tap by mistake, taken back within the minute, is still a minute.
        return new HoursEntry(id, open.JobId, open.Id, open.At, Math.Max(1, minutes), note, device);
    }

    /// <summary>
    /// When a forgotten start probably ended: after the hours that the calendar gives the day, or <see cref="UsualSpell"/>
    /// where it gives none; not after now, and not after the next thing logged. A proposal only: the person decides.
    /// </summary>
    public static DateTimeOffset ProposedStop(Started open, HoursHistory history, WorkCalendar calendar, TimeZoneInfo zone, DateTimeOffset now)
    {
        var planned = calendar.Planned(LocalDay.Of(open.At, zone));
        var stop = open.At.AddHours(planned > 0 ? planned : UsualSpell);
        var next = history.Standing.Select(e => e.StartedAt).Concat(history.Starts.Select(s => s.At)).Where(t => t > open.At).Append(now).Min();
        return stop < next ? stop : next;
    }
}

/// <summary>The day it was where the person is.</summary>
public static class LocalDay
{
    public static DateOnly Of(DateTimeOffset at, TimeZoneInfo zone) => DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(at, zone).DateTime);
}
