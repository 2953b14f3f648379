using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Hours;

public sealed class ClockTests
{
    static readonly WorkCalendar Steady = WorkCalendar.Usual with { Season = [.. Enumerable.Repeat(1.0, 12)] };

    [Fact]
    [Truth(Grade.Property, "the entry lasts from tap to tap and names its start; a stop at or before the start and one past 24 hours are refused with both times")]
    public void A_tap_stops_the_clock()
    {
        var tap = Logged.Tap(1, 0);
        var entry = Clock.Stop(tap, Logged.Id(2), tap.At.AddMinutes(95), "fitted", "phone").Value;
        Assert.Equal((95, tap.Id, tap.At, tap.JobId), (entry.Minutes, entry.Start!.Value, entry.StartedAt, entry.JobId));
        Assert.Null(HoursCheck.Of(entry, Logged.Now));
        Assert.Equal(1, Clock.Stop(tap, Logged.Id(2), tap.At.AddSeconds(5), "", "phone").Value.Minutes);
        Assert.Contains("after the start, 2027-03-01 08:00", Clock.Stop(tap, Logged.Id(2), tap.At, "", "phone").Refusal!.Sentence);
        Assert.Contains("say when the work ended", Clock.Stop(tap, Logged.Id(2), tap.At.AddDays(3), "", "phone").Refusal!.Sentence);
    }

    [Fact]
    [Truth(Grade.Property, "Monday has two hours in the calendar and Sunday none; the next tap and now cut the proposal short")]
    public void A_forgotten_stop_is_proposed()
    {
        DateTimeOffset Proposed(Started tap, HoursHistory history) => Clock.ProposedStop(tap, history, Steady, TimeZoneInfo.Utc, Logged.Now);
        var monday = Logged.Tap(1, 0);
        Assert.Equal(monday.At.AddHours(2), Proposed(monday, Logged.Of([monday])));
        Assert.Equal(monday.At.AddHours(1), Proposed(monday, Logged.Of([monday, Logged.Tap(2, 1)])));
        Assert.Equal(monday.At.AddHours(0.5), Proposed(monday, Logged.Of([monday], Logged.Entry(3, 0.5, 30))));
        var sunday = Logged.Tap(4, -24);
        Assert.Equal(sunday.At.AddHours(Clock.UsualSpell), Proposed(sunday, Logged.Of([sunday])));
        var justNow = monday with { At = Logged.Now.AddMinutes(-20) };
        Assert.Equal(Logged.Now, Proposed(justNow, Logged.Of([justNow])));
    }

    [Fact]
    [Truth(Grade.Property, "withdrawing the entry that closed a start opens it again; withdrawing the start closes it for good")]
    public void A_start_is_open_until_it_is_closed_or_taken_back()
    {
        var tap = Logged.Tap(1, 0);
        var entry = Clock.Stop(tap, Logged.Id(2), tap.At.AddMinutes(95), "", "phone").Value;
        HoursWithdrawal Back(Guid of) => new(Logged.Id(9), of, "", Logged.Now, "phone");
        Assert.Single(new HoursHistory([tap], [], []).Open);
        Assert.Empty(new HoursHistory([tap], [entry], []).Open);
        Assert.Single(new HoursHistory([tap], [entry], [Back(entry.Id)]).Open);
        Assert.Empty(new HoursHistory([tap], [], [Back(tap.Id)]).Open);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(1441)]
    [InlineData(double.NaN)]
    [Truth(Grade.Property, "an entry lasts 1 to 1440 minutes; the sentence says so")]
    public void Impossible_minutes_are_refused(double minutes) =>
        Assert.Contains("give 1 to 1440", HoursCheck.Of(Logged.Entry(1, 0, minutes), Logged.Now)!.Sentence);

    [Fact]
    [Truth(Grade.Property, "each field that cannot be is told by name; a device a few hours ahead is borne with")]
    public void Impossible_rows_are_refused()
    {
        var (entry, tap) = (Logged.Entry(1, 0, 60), Logged.Tap(1, 0));
        Assert.Null(HoursCheck.Of(tap, Logged.Now));
        Assert.Null(HoursCheck.Of(tap with { At = Logged.Now.AddHours(3) }, Logged.Now));
        Assert.Contains("ahead of now", HoursCheck.Of(tap with { At = Logged.Now.AddDays(400) }, Logged.Now)!.Sentence);
        Assert.Contains("from 1950 on", HoursCheck.Of(entry with { StartedAt = DateTimeOffset.MinValue }, Logged.Now)!.Sentence);
        Assert.StartsWith("entry id", HoursCheck.Of(entry with { Id = Guid.Empty }, Logged.Now)!.Sentence);
        Assert.StartsWith("job", HoursCheck.Of(entry with { JobId = Guid.Empty }, Logged.Now)!.Sentence);
        Assert.StartsWith("start", HoursCheck.Of(entry with { Start = Guid.Empty }, Logged.Now)!.Sentence);
        Assert.StartsWith("note", HoursCheck.Of(entry with { Note = null! }, Logged.Now)!.Sentence);
        Assert.StartsWith("entry taken back", HoursCheck.Of(new HoursWithdrawal(Logged.Id(1), Guid.Empty, "", Logged.Now, ""), Logged.Now)!.Sentence);
        Assert.StartsWith("reason", HoursCheck.Of(new HoursWithdrawal(Logged.Id(1), Logged.Id(2), new('x', 2001), Logged.Now, ""), Logged.Now)!.Sentence);
    }
}
