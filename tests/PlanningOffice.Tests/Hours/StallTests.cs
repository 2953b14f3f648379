using System.Collections.Immutable;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Hours;

public sealed class StallTests
{
    static readonly ImmutableArray<SmallWin> Ready = [new(Logged.Id(1), "Reline the shoes", 6), new(Logged.Id(2), "Polish the badge", 1.5)];
    static readonly DateOnly Last = new(2027, 3, 1);

    static Stall? On(int daysLater, WorkCalendar? calendar = null, ImmutableArray<SmallWin>? ready = null) =>
        Stall.Of([Logged.Entry(1, 0, 60)], TimeZoneInfo.Utc, calendar ?? WorkCalendar.Usual, Last.AddDays(daysLater), ready ?? Ready);

    [Fact]
    [Truth(Grade.CommonPractice, "three quiet weeks and a word is said; it offers the shortest job that is ready")]
    public void Three_quiet_weeks_offer_a_small_win()
    {
        Assert.Null(On(20));
        var stall = On(21)!;
        Assert.Equal((3, Logged.Id(2)), (stall.Weeks, stall.Offer!.Value.JobId));
        Assert.Contains("\"Polish the badge\" is ready and takes about 1.5 h", stall.Words);
        Assert.Equal(4, On(30)!.Weeks);
    }

    [Fact]
    [Truth(Grade.Property, "leave is no stall; nothing logged yet is none either; without a ready job the words offer none")]
    public void Leave_is_not_a_stall()
    {
        var away = WorkCalendar.Usual with { Leave = [new(Last.AddDays(1), Last.AddDays(60), "away")] };
        Assert.Null(On(60, away));
        Assert.Null(On(80, away));
        Assert.Equal(3, On(60 + 24, away)!.Weeks);
        Assert.Null(Stall.Of([], TimeZoneInfo.Utc, WorkCalendar.Usual, Last, Ready));
        Assert.Contains("No small job is ready", On(40, null, [])!.Words);
    }
}
