using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests;

public sealed class JobForecastTests
{
    static readonly Job One = Job.Of(new Guid(1, 2, 3, [4, 5, 6, 7, 8, 9, 10, 11]), Guid.Empty, null, Guid.Empty, BlankRoute.Card(RouteCardTests.Bracket, Shop.Usual));

    [Fact]
    [Truth(Grade.Published, "means add: Σ(l + 4m + h)/6 over steps; a pace of mean 1 leaves it so; variances of independent steps add")]
    public void Mean_hours_are_the_sum_of_the_steps_means()
    {
        var spread = JobForecast.Of([One, One], new Chance(5)).Hours;
        var mean = 2 * One.Card!.Steps.Sum(s => s.Hours.Spread.Mean);
        Assert.InRange((spread.Mean.Value - mean) / spread.Mean.Std, -4, 4);

        var still = JobForecast.Of([One, One], new Chance(5), pace: 0).Hours;
        var sd = Math.Sqrt(2 * One.Card!.Steps.Sum(s => s.Hours.Spread.Sd * s.Hours.Spread.Sd));
        Assert.InRange(still.Sd / sd, 0.97, 1.03);
    }

    [Fact]
    [Truth(Grade.Published, "Var(XY) of independent X, Y: σ²x σ²y + σ²x μ²y + μ²x σ²y")]
    public void A_common_pace_widens_the_hours_as_it_must()
    {
        const double pace = JobForecast.UsualPace;
        var spread = JobForecast.Of([One, One, One], new Chance(8)).Hours;
        var mean = 3 * One.Card!.Steps.Sum(s => s.Hours.Spread.Mean);
        var variance = 3 * One.Card!.Steps.Sum(s => s.Hours.Spread.Sd * s.Hours.Spread.Sd);
        Assert.InRange(spread.Sd / Math.Sqrt(variance * pace * pace + variance + mean * mean * pace * pace), 0.97, 1.03);
    }

    [Fact]
    [Truth(Grade.Property, "a job more is counted; a job done is not")]
    public void Jobs_count_until_they_are_done()
    {
        var one = JobForecast.Of([One], new Chance(1));
        var two = JobForecast.Of([One, One], new Chance(1));
        Assert.True(two.Hours.P50.Value > 1.8 * one.Hours.P50.Value);
        Assert.True(one.Hours.P10.Value < one.Hours.P50.Value && one.Hours.P50.Value < one.Hours.P90.Value);
        Assert.Equal(one.Hours, JobForecast.Of([One, One with { State = JobState.Done }], new Chance(1)).Hours);
        Assert.Equal("GBP", Assert.Single(one.Money).Currency);
        Assert.Equal(0, JobForecast.Of([], new Chance(1)).Hours.P90.Value);
    }

    [Theory]
    [InlineData(10, 0.2)]
    [InlineData(1000, -0.1)]
    [InlineData(1000, double.NaN)]
    [Truth(Grade.Property, "too few futures and a senseless pace are refused")]
    public void Senseless_settings_are_refused(int futures, double pace) =>
        Assert.Throws<RefusedException>(() => JobForecast.Of([One], new Chance(1), futures, pace));

    [Fact]
    [Truth(Grade.Property, "a forecast can be stopped")]
    public void It_can_be_cancelled() =>
        Assert.Throws<OperationCanceledException>(() => JobForecast.Of([One], new Chance(1), cancel: new CancellationToken(canceled: true)));
}
