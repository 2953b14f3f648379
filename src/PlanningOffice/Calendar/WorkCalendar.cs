using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Stores;

namespace WitnessMark.PlanningOffice;

/// <summary>Hours of one weekday: by daylight, when noise is allowed, and in the evening, when it is not. Each 0 or more, together at most 24.</summary>
public sealed record DayHours(double Daylight, double Evening)
{
    public double Total => Daylight + Evening;
}

/// <summary>Days without work, both ends included.</summary>
public sealed record Leave(DateOnly From, DateOnly To, string Why);

/// <summary>When the person works, and how surely. A helper who comes every other Saturday is a chance of 0.5 on Saturdays: the turn itself is not kept.</summary>
/// <param name="Week">Seven days, Sunday first, as <see cref="DayOfWeek"/> counts.</param>
/// <param name="Season">Twelve factors on the hours, January first; 0 to 3.</param>
/// <param name="DryChance">Twelve chances that a day is dry, January first.</param>
/// <param name="HelperChance">Seven chances that a helper comes on that weekday, Sunday first.</param>
/// <param name="VanishChance">Chance that a week gives no hours at all; 0 up to below 1.</param>
/// <param name="WeekVariation">Coefficient of variation of the hours of a week that does not vanish, lognormal of mean 1; 0 to 2.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record WorkCalendar(
    ImmutableArray<DayHours> Week, ImmutableArray<Leave> Leave, ImmutableArray<double> Season, ImmutableArray<double> DryChance,
    ImmutableArray<double> HelperChance, double VanishChance, double WeekVariation, string Source)
{
    /// <summary>Two hours on weekday evenings and a Saturday of six (common practice, editable).</summary>
    public static WorkCalendar Usual { get; } = new(
        [new(0, 0), new(0, 2), new(0, 2), new(0, 2), new(0, 2), new(0, 2), new(6, 0)],
        [],
        [0.5, 0.6, 0.9, 1, 1, 1, 1, 1, 1, 1, 0.8, 0.5],
        [0.4, 0.45, 0.5, 0.55, 0.55, 0.6, 0.6, 0.6, 0.55, 0.5, 0.4, 0.4],
        [0, 0, 0, 0, 0, 0, 0.25],
        0.15, 0.4, Rate.CommonPractice);

    public Refusal? Wrong =>
        Count("week", Week, 7) ?? Count("season", Season, 12) ?? Count("dry chance", DryChance, 12) ?? Count("helper chance", HelperChance, 7)
        ?? (Leave.IsDefault || Leave.Contains(null!) ? Refusal.Of("leave", null, "send a list; it may be empty, but not hold empty rows") : null)
        ?? (Week.Contains(null!) ? Refusal.Of("hours of the week", null, "give hours for each of the seven days; they may be 0") : null)
        ?? First(Week, Day) ?? First(Leave, Away)
        ?? First(Season, f => Between("season", f, 3)) ?? First(DryChance.Concat(HelperChance), p => Between("chance", p, 1))
        ?? Between("chance that a week vanishes", VanishChance, 0.99)
        ?? Between("variation of a week", WeekVariation, 2)
        ?? (Source is { Length: <= Check.LongestText } ? null : Refusal.Of("source of the figures", Source, $"say where they come from in at most {Check.LongestText} characters"));

    public bool Away(DateOnly day)
    {
        foreach (var l in Leave)
            if (day >= l.From && day <= l.To) return true;
        return false;
    }

    /// <summary>Hours by pattern, leave and season, were no week to vanish.</summary>
    public double Planned(DateOnly day) => Away(day) ? 0 : Math.Min(24, Week[(int)day.DayOfWeek].Total * Season[day.Month - 1]);

    /// <summary>Mean hours, vanishing weeks counted.</summary>
    public double Expected(DateOnly day) => Planned(day) * (1 - VanishChance);

    /// <summary>Mean hours of the days from a date on.</summary>
    public double HoursFrom(DateOnly start, int days)
    {
        var sum = 0.0;
        for (var d = 0; d < Until(start, days); d++) sum += Expected(start.AddDays(d));
        return sum;
    }

    /// <summary>The first day at whose end the mean hours reach the wanted ones; null when that is not within the given days.</summary>
    public DateOnly? DayOf(DateOnly start, double hours, int within = 7300)
    {
        var sum = 0.0;
        for (var d = 0; d < Until(start, within); d++)
            if ((sum += Expected(start.AddDays(d))) >= hours) return start.AddDays(d);
        return null;
    }

    // The calendar of years ends with 9999.
    static int Until(DateOnly start, int days) => Math.Min(days, DateOnly.MaxValue.DayNumber - start.DayNumber);

    static Refusal? Day(DayHours d) =>
        Between("hours of a day", d.Daylight, 24) ?? Between("hours of an evening", d.Evening, 24) ?? Between("hours of a day", d.Total, 24);

    static Refusal? Away(Leave l) =>
        l.Why is not { Length: <= Check.LongestText } ? Refusal.Of("leave, why", l.Why, $"it may be empty, but must be there; at most {Check.LongestText} characters are kept")
        : l.To < l.From ? Refusal.Of("leave", $"{l.To:yyyy-MM-dd}", $"it must not end before it begins, {l.From:yyyy-MM-dd}")
        : null;

    static Refusal? First<T>(IEnumerable<T> rows, Func<T, Refusal?> wrong) => rows.Select(wrong).FirstOrDefault(r => r is not null);

    static Refusal? Count<T>(string field, ImmutableArray<T> list, int wanted) =>
        !list.IsDefault && list.Length == wanted ? null : Refusal.Of(field, list.IsDefault ? null : $"{list.Length} values", $"give {wanted}");

    static Refusal? Between(string field, double value, double most) =>
        value >= 0 && value <= most ? null : Refusal.Of(field, $"{value}", $"give a number from 0 to {most}");
}
