using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Calendar;

public sealed class WorkCalendarTests
{
    static readonly WorkCalendar Sure = WorkCalendar.Usual with { VanishChance = 0, Season = [.. Enumerable.Repeat(1.0, 12)] };
    static readonly DateOnly Monday = new(2031, 3, 3);

    [Fact]
    [Truth(Grade.Property, "five evenings of 2 h and a Saturday of 6 h: 16 h a week, by hand")]
    public void A_week_adds_up()
    {
        Assert.Equal(16, Sure.HoursFrom(Monday, 7), 12);
        Assert.Equal(Monday.AddDays(5), Sure.DayOf(Monday, 16));
        Assert.Equal(Monday.AddDays(7), Sure.DayOf(Monday, 16.5));
        Assert.Null(Sure.DayOf(Monday, 1000, 30));
    }

    [Fact]
    [Truth(Grade.Property, "one week in four vanishing takes a quarter of the mean hours; January's half season takes half")]
    public void Vanishing_weeks_and_seasons_count()
    {
        Assert.Equal(12, (Sure with { VanishChance = 0.25 }).HoursFrom(Monday, 7), 12);
        Assert.Equal(1, WorkCalendar.Usual.Planned(new(2031, 1, 6)), 12);
    }

    [Fact]
    [Truth(Grade.Property, "the sentence names the field, the value and what would be right")]
    public void Impossible_calendars_are_refused()
    {
        Assert.Null(WorkCalendar.Usual.Wrong);
        Assert.Contains("week", (Sure with { Week = Sure.Week[..6] }).Wrong!.Sentence);
        Assert.Contains("it must not end before it begins", (Sure with { Leave = [new(Monday, Monday.AddDays(-1), "")] }).Wrong!.Sentence);
        Assert.Contains("hours of a day", (Sure with { Week = Sure.Week.SetItem(2, new(20, 6)) }).Wrong!.Sentence);
        Assert.Contains("season", (Sure with { Season = Sure.Season.SetItem(0, double.NaN) }).Wrong!.Sentence);
        Assert.Contains("vanishes", (Sure with { VanishChance = 1 }).Wrong!.Sentence);
        Assert.Contains("chance", (Sure with { DryChance = Sure.DryChance.SetItem(3, 1.5) }).Wrong!.Sentence);
        Assert.Contains("source", (Sure with { Source = null! }).Wrong!.Sentence);
        Assert.Throws<RefusedException>(() => new DayTable(Sure, Monday, 0));
        Assert.Throws<RefusedException>(() => new DayTable(Sure, DateOnly.MaxValue, 10));
    }

    [Fact]
    [Truth(Grade.Property, "null rows inside the lists are told, not crashed on")]
    public void Missing_rows_are_refused()
    {
        Assert.Contains("week", (Sure with { Week = Sure.Week.SetItem(0, null!) }).Wrong!.Sentence);
        Assert.Contains("leave", (Sure with { Leave = [null!] }).Wrong!.Sentence);
        Assert.Contains("leave", (Sure with { Leave = [new(Monday, Monday, null!)] }).Wrong!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "dates outside the calendar of years do not crash the sums")]
    public void The_end_of_time_is_not_passed()
    {
        Assert.Null(Sure.DayOf(DateOnly.MaxValue.AddDays(-3), 1000));
        Assert.True(double.IsFinite(Sure.HoursFrom(DateOnly.MaxValue.AddDays(-3), 100)));
    }
}
