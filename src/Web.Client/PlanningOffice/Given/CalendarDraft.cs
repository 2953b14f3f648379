using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.Web.Client.PlanningOffice.Frame;

namespace WitnessMark.Web.Client.PlanningOffice.Given;

/// <summary>The person's calendar while it is edited: everything as typed.</summary>
public sealed class CalendarDraft
{
    const string Own = "own";

    readonly WorkCalendar _from;

    public CalendarDraft(WorkCalendar from)
    {
        _from = from;
        (Daylight, Evening) = ([.. from.Week.Select(d => Told.Number(d.Daylight))], [.. from.Week.Select(d => Told.Number(d.Evening))]);
        (Helper, Season, Dry) = (Percents(from.HelperChance), Percents(from.Season), Percents(from.DryChance));
        (Vanish, Variation) = (Told.Number(from.VanishChance * 100), Told.Number(from.WeekVariation * 100));
        Leave = [.. from.Leave.Select(l => new LeaveDraft { From = Told.FieldDay(l.From), To = Told.FieldDay(l.To), Why = l.Why })];
    }

    /// <summary>Hours by weekday, Sunday first.</summary>
    public string[] Daylight { get; }

    public string[] Evening { get; }

    /// <summary>Percent by weekday, Sunday first.</summary>
    public string[] Helper { get; }

    /// <summary>Percent of the usual hours, by month.</summary>
    public string[] Season { get; }

    /// <summary>Percent, by month.</summary>
    public string[] Dry { get; }

    /// <summary>Percent.</summary>
    public string Vanish { get; set; }

    /// <summary>Percent.</summary>
    public string Variation { get; set; }

    public List<LeaveDraft> Leave { get; }

    /// <exception cref="RefusedException">A field cannot be read, or the calendar cannot be so.</exception>
    public WorkCalendar Read()
    {
        var read = _from with
        {
            Week = [.. Daylight.Zip(Evening, (day, evening) => new DayHours(Typed.Number("hours by day", day), Typed.Number("hours in the evening", evening)))],
            HelperChance = Shares("chance of a helper", Helper),
            Season = Shares("season", Season),
            DryChance = Shares("chance of a dry day", Dry),
            VanishChance = Typed.Number("weeks that vanish", Vanish) / 100,
            WeekVariation = Typed.Number("spread of a week", Variation) / 100,
            Leave = [.. Leave.Select(l => l.Read())],
            Source = Own,
        };
        return read.Wrong is { } wrong ? throw new RefusedException(wrong) : read;
    }

    static string[] Percents(ImmutableArray<double> shares) => [.. shares.Select(s => Told.Number(s * 100))];

    static ImmutableArray<double> Shares(string field, string[] percents) => [.. percents.Select(p => Typed.Number(field, p) / 100)];
}

/// <summary>Days away, as typed.</summary>
public sealed class LeaveDraft
{
    public string From { get; set; } = "";

    public string To { get; set; } = "";

    public string Why { get; set; } = "";

    public Leave Read() => new(Day("first day away", From), Day("last day away", To), Why.Trim());

    static DateOnly Day(string field, string text) => Typed.Day(field, text) ?? throw new RefusedException(Refusal.Of(field, text, "give a day as 2027-06-05"));
}
