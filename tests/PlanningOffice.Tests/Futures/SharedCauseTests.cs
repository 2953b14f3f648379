using WitnessMark.PlanningOffice.Futures;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Futures;

public sealed class SharedCauseTests
{
    static readonly Consequence Nothing = new(null, default, default, Cost.None("GBP"));

    static PlanForecast Wet(double pull, bool? first, bool? second, int futures = 200) => Plans.Simulated(Plans.Plan(
        Plans.Job(1, 2) with { MayFind = [Plans.Hidden(1, 0.5, "wet", pull, Nothing, first), Plans.Hidden(2, 0.5, "Wet", pull, Nothing, second), Plans.Hidden(3, 0.5, "wet", pull, Nothing)] }), futures).Forecast();

    static double Odds(PlanForecast f, int n) => f.Discoveries.Single(d => d.Discovery == Plans.Id(1000 + n)).Odds;

    [Theory]
    [InlineData(0)]
    [InlineData(0.3)]
    [InlineData(0.5)]
    [InlineData(0.95)]
    [Truth(Grade.Published, "orthant of the bivariate normal: P(Z1 < 0, Z2 < 0) = 1/4 + asin ρ/2π (W. F. Sheppard, 1899)")]
    public void One_finding_moves_the_odds_of_another_as_the_orthant_says(double rho)
    {
        var joint = 0.25 + Math.Asin(rho) / (2 * Math.PI);
        Assert.Equal(joint / 0.5, Odds(Wet(rho, true, null), 3), 6);
        Assert.Equal(1 - joint / 0.5, Odds(Wet(rho, false, null), 3), 6);
    }

    [Theory]
    [InlineData(0.4)]
    [InlineData(0.8)]
    [Truth(Grade.Published, "orthant of the trivariate normal: 1/8 + (asin ρ12 + asin ρ13 + asin ρ23)/4π (closed form, e.g. Kendall and Stuart)")]
    public void Two_findings_move_the_odds_of_a_third_as_the_orthant_says(double rho)
    {
        var three = 0.125 + 3 * Math.Asin(rho) / (4 * Math.PI);
        Assert.Equal(three / (0.25 + Math.Asin(rho) / (2 * Math.PI)), Odds(Wet(rho, true, true), 3), 6);
    }

    [Fact]
    [Truth(Grade.Property, "with nothing known the odds are as given; a discovery that stands alone is moved by nothing")]
    public void Nothing_known_moves_nothing()
    {
        Assert.Equal(0.5, Odds(Wet(0.7, null, null), 3), 9);
        var plan = Plans.Plan(Plans.Job(1, 2) with { MayFind = [Plans.Hidden(1, 0.2, "", 0, Nothing), Plans.Hidden(2, 0.3, "wet", 0.5, Nothing, true)] });
        Assert.Equal(0.2, Odds(Plans.Simulated(plan).Forecast(), 1), 9);
    }

    [Fact]
    [Truth(Grade.Published, "the same orthant, counted over futures: both found in 1/4 + asin ρ/2π of them (Sheppard, 1899)")]
    public void Drawn_findings_go_together_as_the_orthant_says()
    {
        const int futures = 40_000;
        const double rho = 0.6;
        // Each finding adds 2 h to a job of 2 h: the hours count the findings.
        Consequence more = new(null, Plans.Sure(2), default, Cost.None("GBP"));
        var run = Plans.Simulated(Plans.Plan(Plans.Job(1, 2) with { MayFind = [Plans.Hidden(1, 0.5, "wet", rho, more), Plans.Hidden(2, 0.5, "wet", rho, more)] }), futures);
        var both = 0;
        foreach (var h in run.Courses.Hours) both += h > 5 ? 1 : 0;
        var known = 0.25 + Math.Asin(rho) / (2 * Math.PI);
        Assert.InRange(both / (double)futures, known - 4 * Math.Sqrt(known * (1 - known) / futures), known + 4 * Math.Sqrt(known * (1 - known) / futures));
    }
}
