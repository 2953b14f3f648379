using WitnessMark.Maths;
using WitnessMark.Stores.Judging;
using WitnessMark.Tests;

namespace WitnessMark.Stores.Tests.Judging;

public class JudgingTests
{
    static readonly DateOnly Day = new(2031, 5, 1);

    static RouteOutlook Outlook(Route route, double hours, double money, double wait, double certainty, double originality) => new(
        route, Sure(hours), Sure(money), Sure(wait), new(certainty, "so", "test"), new(originality, "so", "test"), [], null);

    static Estimate Sure(double x) => new(x, x, x, "test");

    static ConditionSeen Seen(ConditionGrade grade, int hour, string evidence = "seen") =>
        new(Guid.NewGuid(), Guid.NewGuid(), Part, grade, evidence, [], [], new(2031, 5, 1, hour, 0, 0, TimeSpan.Zero), "phone");

    static readonly Guid Part = Guid.NewGuid();

    [Fact]
    [Truth(Grade.Published, "PERT mean (low + 4 likely + high)/6: D. G. Malcolm and others, Operations Research 7 (1959)")]
    public void The_expected_figure_is_the_PERT_mean() => Assert.Equal(4.5, new Estimate(2, 4, 9, "test").Expected, 1e-12);

    [Fact]
    [Truth(Grade.Property, "Pareto: beaten is what another matches by every measure and betters by one; what is not known is not weighed")]
    public void A_beaten_route_is_told_by_what_beats_it()
    {
        var rows = RouteComparison.Of("hinge", "GBP", Day, 7, [
            Outlook(Route.Clean, 2, 10, 0, 0.9, 1), Outlook(Route.BuyNew, 2, 20, 14, 0.9, 0.3), Outlook(Route.Remake, 1, 30, 0, 0.8, 0.4),
            Outlook(Route.SendOut, 9, 90, 90, 0.1, 0.1) with { Hours = null }]).Rows;
        Assert.Equal("To clean is better by money, date and originality and worse by nothing.", rows[1].Beaten);
        Assert.All(new[] { 0, 2, 3 }, i => Assert.Null(rows[i].Beaten));
        Assert.Null(rows[3].ReadyBy);
    }

    [Fact]
    [Truth(Grade.Property, "14 hours at 7 a week are two weeks, after ten days of waiting")]
    public void The_date_is_the_wait_and_the_hours()
    {
        var row = RouteComparison.Of("hinge", "GBP", Day, 7, [Outlook(Route.Remake, 14, 0, 10, 0.5, 0.5)]).Rows[0];
        Assert.Equal(Day.AddDays(24), row.ReadyBy);
        Assert.Contains("ready by 2031-05-25", new RouteComparison("hinge", "GBP", Day, 7, [row]).Words());
    }

    [Fact]
    [Truth(Grade.Property, "figures that fall, scores outside 0 to 1 and hours of no week are refused in words")]
    public void Senseless_figures_are_refused()
    {
        string Refused(RouteOutlook o, double hours = 7) => Assert.Throws<RefusedException>(() => RouteComparison.Of("hinge", "GBP", Day, hours, [o])).Message;
        var good = Outlook(Route.Remake, 1, 1, 1, 0.5, 0.5);
        Assert.Contains("hours to remake", Refused(good with { Hours = new(3, 2, 4, "") }));
        Assert.Contains("money to remake", Refused(good with { Money = new(-1, 2, 4, "") }));
        Assert.Contains("must rise", Refused(good with { WaitDays = new(1, 2, double.NaN, "") }));
        Assert.Contains("certainty of remake", Refused(good with { Certainty = new(1.2, "", "") }));
        Assert.Contains("hours a week", Refused(good, 0));
        Assert.Contains("hours a week", Refused(good, double.NaN));
    }

    [Fact]
    [Truth(Grade.Property, "the last grade by the clock stands, of two of one time the later arrival; a grade needs evidence")]
    public void The_last_grade_stands()
    {
        var latest = Grades.Latest([Seen(ConditionGrade.Poor, 9), Seen(ConditionGrade.Sound, 8), Seen(ConditionGrade.Worn, 9)]);
        Assert.Equal(ConditionGrade.Worn, latest[Part].Grade);
        Assert.Null(Seen(ConditionGrade.Lost, 1).Wrong());
        Assert.Contains("evidence", Seen(ConditionGrade.Lost, 1, " ").Wrong()!.Sentence);
        Assert.Contains("grade", Seen((ConditionGrade)99, 1).Wrong()!.Sentence);
        Assert.All(Enum.GetValues<ConditionGrade>(), g => Assert.Equal(g, Grades.Read($" {g.Words().ToUpperInvariant()} ")));
        Assert.Equal(6, Enum.GetValues<ConditionGrade>().Select(g => g.Meaning()).Distinct().Count());
        Assert.Null(Grades.Read("shiny"));
    }

    [Fact]
    [Truth(Grade.Property, "a decision needs its reason and keeps at most 20,000 characters of comparison")]
    public void A_decision_needs_its_reason()
    {
        var chosen = new RouteChosen(Guid.NewGuid(), Guid.NewGuid(), Part, Route.Remake, "nobody sells it", "", new(2031, 5, 1, 0, 0, 0, TimeSpan.Zero), "bench");
        Assert.Null(chosen.Wrong());
        Assert.Contains("reason", (chosen with { Reason = "" }).Wrong()!.Sentence);
        Assert.Contains("20000", (chosen with { AsItStood = new('x', 20_001) }).Wrong()!.Sentence);
    }
}
