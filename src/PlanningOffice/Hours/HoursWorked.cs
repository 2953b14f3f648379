using System.Collections.Immutable;

namespace WitnessMark.PlanningOffice;

/// <param name="Monday">First day of the week.</param>
/// <param name="Hours">Hours of entries begun in it.</param>
public readonly record struct WeekWorked(DateOnly Monday, double Hours);

/// <summary>Two entries that claim the same time.</summary>
/// <param name="Minutes">Claimed twice.</param>
public sealed record Overlap(Guid Earlier, Guid Later, double Minutes, string Words);

/// <summary>Sums over the standing entries; hours.</summary>
public static class HoursWorked
{
    public static ImmutableDictionary<Guid, double> ByJob(IEnumerable<HoursEntry> standing) =>
        standing.GroupBy(e => e.JobId).ToImmutableDictionary(g => g.Key, g => g.Sum(e => e.Minutes) / 60);

    /// <summary>Monday to Sunday, from the first week worked to the last, weeks without work included; an entry counts where it began.</summary>
    public static ImmutableArray<WeekWorked> ByWeek(IEnumerable<HoursEntry> standing, TimeZoneInfo zone)
    {
        var hours = standing.GroupBy(e => Monday(LocalDay.Of(e.StartedAt, zone))).ToDictionary(g => g.Key, g => g.Sum(e => e.Minutes) / 60);
        if (hours.Count == 0) return [];
        var (first, last) = (hours.Keys.Min(), hours.Keys.Max());
        return [.. Enumerable.Range(0, (last.DayNumber - first.DayNumber) / 7 + 1)
            .Select(w => first.AddDays(7 * w)).Select(m => new WeekWorked(m, hours.GetValueOrDefault(m)))];
    }

    /// <summary>Entries by one pair of hands that claim the same time by a minute or more; both still count until one is taken back.</summary>
    public static ImmutableArray<Overlap> Overlaps(IEnumerable<HoursEntry> standing, TimeZoneInfo zone)
    {
        var found = ImmutableArray.CreateBuilder<Overlap>();
        HoursEntry? longest = null;
        foreach (var entry in standing.OrderBy(e => e.StartedAt).ThenBy(e => e.Id))
        {
            if (longest is not null && Common(longest, entry) is >= 1 and var minutes)
                found.Add(new(longest.Id, entry.Id, minutes, Told(longest, entry, minutes, zone)));
            if (longest is null || End(entry) > End(longest)) longest = entry;
        }
        return found.ToImmutable();
    }

    internal static DateOnly Monday(DateOnly day) => day.AddDays(-(((int)day.DayOfWeek + 6) % 7));

    static DateTimeOffset End(HoursEntry entry) => entry.StartedAt.AddMinutes(entry.Minutes);

    static double Common(HoursEntry earlier, HoursEntry later)
    {
        var end = End(earlier) < End(later) ? End(earlier) : End(later);
        return (end - later.StartedAt).TotalMinutes;
    }

    static string Told(HoursEntry earlier, HoursEntry later, double minutes, TimeZoneInfo zone)
    {
        var (from, to) = (TimeZoneInfo.ConvertTime(later.StartedAt, zone), TimeZoneInfo.ConvertTime(End(earlier), zone));
        return FormattableString.Invariant($"On {from:yyyy-MM-dd} {minutes:0} minutes are logged twice: the work begun at {from:HH:mm} starts before {to:HH:mm}, when the one before ends; take one back or shorten it.");
    }
}
