using System.Collections.Immutable;
using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Hours;

using Plans = WitnessMark.PlanningOffice.Tests.Futures.Plans;

public sealed class HoursWorkedTests
{
    [Fact]
    [Truth(Grade.Property, "sums by hand; an idle week between two worked ones is shown as 0")]
    public void Hours_add_up_by_job_and_by_week()
    {
        HoursEntry[] entries = [Logged.Entry(1, 0, 60), Logged.Entry(2, 5, 30, 101), Logged.Entry(3, 24 * 15, 90)];
        var jobs = HoursWorked.ByJob(entries);
        Assert.Equal((2.5, 0.5), (jobs[Logged.Id(100)], jobs[Logged.Id(101)]));
        ImmutableArray<WeekWorked> weeks = [new(new(2027, 3, 1), 1.5), new(new(2027, 3, 8), 0), new(new(2027, 3, 15), 1.5)];
        Assert.Equal(weeks.AsEnumerable(), HoursWorked.ByWeek(entries, TimeZoneInfo.Utc));
        Assert.Empty(HoursWorked.ByWeek([], TimeZoneInfo.Utc));
    }

    [Fact]
    [Truth(Grade.Property, "half past eleven on Sunday night by Greenwich is Monday two hours further east")]
    public void A_week_is_where_the_person_is()
    {
        var east = TimeZoneInfo.CreateCustomTimeZone("two east", TimeSpan.FromHours(2), null, null);
        HoursEntry[] entries = [Logged.Entry(1, -8.5, 60)];
        Assert.Equal(new DateOnly(2027, 2, 22), HoursWorked.ByWeek(entries, TimeZoneInfo.Utc)[0].Monday);
        Assert.Equal(new DateOnly(2027, 3, 1), HoursWorked.ByWeek(entries, east)[0].Monday);
    }

    [Fact]
    [Truth(Grade.Property, "one long entry over two short ones is told twice; end to end is no overlap")]
    public void Time_logged_twice_is_told()
    {
        var told = HoursWorked.Overlaps([Logged.Entry(3, 2, 30), Logged.Entry(1, 0, 180), Logged.Entry(2, 1, 15), Logged.Entry(4, 3, 60)], TimeZoneInfo.Utc);
        Assert.Equal([(Logged.Id(2), 15.0), (Logged.Id(3), 30.0)], told.Select(o => (o.Later, o.Minutes)));
        Assert.All(told, o => Assert.Equal(Logged.Id(1), o.Earlier));
        Assert.Contains("2027-03-01 15 minutes are logged twice", told[0].Words);
    }

    [Fact]
    [Truth(Grade.Property, "jobs not done, without hours or without a guess teach nothing; the order is that of the last entry")]
    public void Finished_jobs_come_from_jobs_and_log()
    {
        Job Done(int n, double guess) => Plans.Job(n, guess) with { State = JobState.Done, Kind = WorkKind.Weld };
        HoursEntry On(int n, double hoursOn, Job job) => Logged.Entry(n, hoursOn, 60) with { JobId = job.Id };
        var (first, second, open, unguessed, unlogged) = (Done(1, 2), Done(2, 3), Plans.Job(3, 4), Done(4, 0), Done(5, 1));
        var found = FinishedJobs.Of([second, first, open, unguessed, unlogged],
            Logged.Of([], On(1, 0, first), On(2, 10, second), On(3, 2, first), On(4, 3, open), On(5, 4, unguessed)));
        Assert.Equal([new(WorkKind.Weld, null, 2, 2), new(WorkKind.Weld, null, 3, 1)], found.AsEnumerable());
    }

    [Fact]
    [Truth(Grade.Property, "a plan without chance: three hours worked and four sure hours ahead end at seven on the day the forecast finishes")]
    public void The_fan_opens_at_what_was_worked()
    {
        var forecast = Plans.Simulated(Plans.Plan(Plans.Job(1, 4))).Forecast();
        var burn = BurnUp.Of([Logged.Entry(1, -48, 120), Logged.Entry(2, -47, 30), Logged.Entry(3, -24, 30)], TimeZoneInfo.Utc, forecast);
        Assert.Equal([new(new(2027, 2, 27), 2.5), new(new(2027, 2, 28), 3)], burn.Worked.AsEnumerable());
        Assert.Equal(new(Plans.Monday, 3), burn.Now);
        Assert.Equal(7, burn.P50.Hours, 1e-3);
        Assert.Equal(forecast.Finish.P90, burn.P90.Day);
        Assert.Equal((3, 3, 3), burn.At(burn.Now.Day));
        Assert.Equal(burn.P50.Hours, burn.At(burn.P50.Day).P50);
        Assert.Equal(burn.At(burn.P90.Day), burn.At(burn.P90.Day.AddDays(400)));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(5)]
    [InlineData(14)]
    [Truth(Grade.SecondImplementation, "200,000 seeded draws of the whole job, those not longer than the hours logged thrown away")]
    public void What_is_left_is_what_draws_leave(double logged)
    {
        var ratio = new NormalMixture([(0.3, 0.2, 0.3), (0.7, 0.6, 0.5)]);
        var chance = new Chance(21);
        var left = Enumerable.Range(0, 200_000).Select(_ => 6 * Math.Exp(ratio.Draw(chance))).Where(t => t > logged).Select(t => t - logged).Order().ToArray();
        var found = Remaining.Of(6, logged, ratio);
        Assert.Equal(left[left.Length / 10], found.P10, 0.02 * found.P10 + 0.01);
        Assert.Equal(left[left.Length / 2], found.P50, 0.02 * found.P50);
        Assert.Equal(left[left.Length * 9 / 10], found.P90, 0.03 * found.P90);
    }

    [Fact]
    [Truth(Grade.Property, "a job far past all that was foretold still has hours to come, rising with those logged; impossible hours are refused")]
    public void A_job_that_ran_over_is_not_told_to_be_done()
    {
        var ratio = new NormalMixture([(1, 0.4, 0.4)]);
        var (once, twice) = (Remaining.Of(2, 50, ratio), Remaining.Of(2, 100, ratio));
        Assert.True(once.P10 > 0 && once.P10 < once.P50 && once.P50 < once.P90);
        Assert.Equal(2 * once.P50, twice.P50, 1e-6 * twice.P50);
        Assert.Throws<RefusedException>(() => Remaining.Of(0, 1, ratio));
        Assert.Throws<RefusedException>(() => Remaining.Of(1, double.NaN, ratio));
    }
}
