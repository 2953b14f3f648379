using WitnessMark.Maths;
using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Futures;

public sealed class HoursToComeTests
{
    const double Pace = 0.25;

    static Job One(int n) => Job.Of(Plans.Id(n), Guid.Empty, null, Guid.Empty, BlankRoute.Card(RouteCardTests.Bracket, Shop.Usual));

    static PlanForecast Forecast(double pace, ulong seed, params Job[] jobs) =>
        Plans.Simulated(Plans.Plan(jobs) with { Pace = new SharedPace(pace, 0) }, 20_000, seed).Forecast();

    [Fact]
    [Truth(Grade.Published, "means add: Σ(l + 4m + h)/6 over jobs; a pace of mean 1 leaves it so; variances of independent jobs add")]
    public void Mean_hours_are_the_sum_of_the_jobs_means()
    {
        var spread = Forecast(Pace, 5, One(1), One(2)).Hours;
        var mean = 2 * One(1).Hours.Spread.Mean;
        Assert.InRange((spread.Mean.Value - mean) / spread.Mean.Std, -4, 4);

        var still = Forecast(0, 5, One(1), One(2)).Hours;
        var sd = Math.Sqrt(2 * One(1).Hours.Spread.Sd * One(1).Hours.Spread.Sd);
        Assert.InRange(still.Sd / sd, 0.97, 1.03);
    }

    [Fact]
    [Truth(Grade.Published, "Var(XY) of independent X, Y: σ²x σ²y + σ²x μ²y + μ²x σ²y")]
    public void A_common_pace_widens_the_hours_as_it_must()
    {
        var spread = Forecast(Pace, 8, One(1), One(2), One(3)).Hours;
        var mean = 3 * One(1).Hours.Spread.Mean;
        var variance = 3 * One(1).Hours.Spread.Sd * One(1).Hours.Spread.Sd;
        Assert.InRange(spread.Sd / Math.Sqrt(variance * Pace * Pace + variance + mean * mean * Pace * Pace), 0.97, 1.03);
    }

    [Fact]
    [Truth(Grade.Property, "a job more is counted; a job done is not")]
    public void Jobs_count_until_they_are_done()
    {
        var one = Forecast(Pace, 1, One(1));
        var two = Forecast(Pace, 1, One(1), One(2));
        Assert.True(two.Hours.P50.Value > 1.8 * one.Hours.P50.Value);
        Assert.True(one.Hours.P10.Value < one.Hours.P50.Value && one.Hours.P50.Value < one.Hours.P90.Value);
        Assert.Equal(one.Hours, Forecast(Pace, 1, One(1), One(2) with { State = JobState.Done }).Hours);
        Assert.Equal("GBP", one.Cash.Currency);
    }

    [Theory]
    [InlineData(10, 0.2)]
    [InlineData(1000, -0.1)]
    [InlineData(1000, double.NaN)]
    [Truth(Grade.Property, "too few futures and a senseless pace are refused")]
    public void Senseless_settings_are_refused(int futures, double pace) =>
        Assert.Throws<RefusedException>(() => Plans.Simulated(Plans.Plan(One(1)) with { Pace = new SharedPace(pace, 0) }, futures).Forecast());

    [Fact]
    [Truth(Grade.Property, "a forecast can be stopped")]
    public void It_can_be_cancelled() =>
        Assert.Throws<OperationCanceledException>(() => Simulation.Of(Plans.Plan(One(1)), 1, 1000).Run(cancel: new CancellationToken(canceled: true)));
}
