using WitnessMark.FrontOffice.CompareRoutes;
using WitnessMark.Maths;
using WitnessMark.PlanningOffice;
using WitnessMark.PlanningOffice.Templates;
using WitnessMark.Stores;
using WitnessMark.Stores.Judging;
using WitnessMark.Stores.Orders;
using Routes = WitnessMark.FrontOffice.CompareRoutes.CompareRoutes;

namespace WitnessMark.Tests.FrontOffice.CompareRoutes;

public sealed class CompareRoutesTests
{
    static readonly Guid Van = Guid.NewGuid();
    static readonly DateOnly Day = new(2031, 3, 1);
    static readonly Part Hinge = new(Guid.NewGuid(), Guid.NewGuid(), "bonnet hinge", "", Hand.None, 2, "", null);

    static CompareRequest Asked => new(Van, Hinge, "body", Shop.Usual, Day, 7);

    static ConditionSeen Seen(ConditionGrade grade) => new(Guid.NewGuid(), Van, Hinge.Id, grade, "seen", [], [], default, "phone");

    static GivenQuote Quoted(Route route, decimal price, string currency, int pieces, int validDays, int? lead = 10) =>
        new(new(Guid.NewGuid(), Van, Guid.NewGuid(), Hinge.Id, route, "hinges", pieces, new(price, currency), Day.AddDays(-20), Day.AddDays(validDays), lead, ""), $"firm {price}");

    static RouteOutlook Of(CompareRequest request, Route route) => Routes.Run(request).Comparison.Rows.Single(r => r.Outlook.Route == route).Outlook;

    [Fact]
    [Truth(Grade.Published, "PERT mean (low + 4 likely + high)/6, Malcolm and others, Operations Research 7 (1959), summed by hand over the planner's cleaning jobs; the mean of a sum is the sum of the means")]
    public void Hours_of_cleaning_are_those_of_the_planners_jobs()
    {
        // Take off 0.3/0.8/3 ×1.5, clean 0.4/1/3 ×1.6, prime 0.6/1.5/4 ×1.4, refit 0.4/1.2/4 ×1.6; a sheared fixing 0.2 × 0.5/1.5/5, pitting 0.12 × 0.5/2/8.
        var wanted = 6.5 / 6 * 1.5 + 7.4 / 6 * 1.6 + 10.6 / 6 * 1.4 + 9.2 / 6 * 1.6 + 0.2 * 11.5 / 6 + 0.12 * 16.5 / 6;
        Assert.Equal(wanted, Of(Asked, Route.Clean).Hours!.Expected, 1e-9);
        Assert.Equal(2 * wanted, Of(Asked with { Bias = _ => 2 }, Route.Clean).Hours!.Expected, 1e-9);
    }

    [Fact]
    [Truth(Grade.Property, "six routes, each with what it lacks; the decision keeps the whole comparison")]
    public void The_person_decides_and_the_comparison_stays()
    {
        var result = Routes.Run(Asked);
        Assert.Equal(Enum.GetValues<Route>(), result.Comparison.Rows.Select(r => r.Outlook.Route));
        Assert.All(result.Comparison.Rows, r => Assert.True(r.ReadyEarly <= r.ReadyBy && r.ReadyBy <= r.ReadyLate && r.Outlook.Known));
        Assert.NotEmpty(result.Cautions);
        var (part, chosen) = result.Choose(Route.Remake, "nobody sells it", Guid.NewGuid(), new(2031, 3, 1, 0, 0, 0, TimeSpan.Zero), "bench");
        Assert.Equal(new RouteDecision(Route.Remake, "nobody sells it", Day), part.Route);
        Assert.All(Enum.GetValues<Route>(), r => Assert.Contains($"{r.Words()}: expected", chosen.AsItStood));
        Assert.Contains("lacking: a drawing and a job card", chosen.AsItStood);
        Assert.Throws<RefusedException>(() => result.Choose(Route.Remake, " ", Guid.NewGuid(), new(2031, 3, 1, 0, 0, 0, TimeSpan.Zero), "bench"));
    }

    [Fact]
    [Truth(Grade.Property, "the cheapest quote that holds, in the shop's money and for the pieces wanted, stands for price and days")]
    public void A_quote_takes_the_place_of_common_practice()
    {
        var rate = new RateOfExchange(Guid.NewGuid(), Van, "EUR", "GBP", 0.8m, Day, "bank", default, "phone");
        var asked = Asked with { Rates = [rate], Quotes = [Quoted(Route.BuyNew, 90, "GBP", 2, 5), Quoted(Route.BuyNew, 50, "EUR", 1, 5, 12), Quoted(Route.BuyNew, 1, "GBP", 2, -1)] };
        var o = Of(asked, Route.BuyNew);
        // Two pieces at 50 EUR are 80 GBP; hidden work adds 0.2 × 0/4/20 and 0.15 × 0/5/30 for the pieces.
        Assert.Equal(80, o.Money!.Low, 1e-6);
        Assert.InRange(o.Money.Expected, 80, 90);
        Assert.Equal((12, 12), (o.WaitDays.Low, o.WaitDays.High));
        Assert.Contains("quote of firm 50", o.Money.Source);
        Assert.Contains(o.Lacking, l => l.Contains("is for 1"));
        Assert.Contains("a rate of EUR to GBP for the quote of firm 50", Of(asked with { Rates = [] }, Route.BuyNew).Lacking);
        Assert.Contains(Of(Asked with { Quotes = [Quoted(Route.BuyNew, 1, "GBP", 2, -1)] }, Route.BuyNew).Lacking, l => l.Contains("a fresh quote") && l.Contains("2031-02-28"));
    }

    [Fact]
    [Truth(Grade.Property, "a card tells the making; its sent-out steps are told as lacking tools")]
    public void A_card_stands_for_the_guessed_making()
    {
        var step = new Step(1, "turn the pin", "lathe", new(1, 2, 3), "own", Cost.None("GBP"), ["swarf cuts"], new("the shop has no lathe.", new(5, 10, 20)));
        var card = Job.Of(Guid.NewGuid(), Van, Hinge.SystemId, Hinge.Id, new("hinge", 2, [], [step], []));
        var (guessed, carded) = (Routes.Run(Asked), Routes.Run(Asked with { Kept = [card] }));
        var (before, after) = (Of(Asked, Route.Remake), Of(Asked with { Kept = [card] }, Route.Remake));
        // The table guesses 2/5/14 × 1.5 for making; the card says 1/2/3.
        Assert.Equal(before.Hours!.Expected - 36.0 / 6 * 1.5 + 2, after.Hours!.Expected, 1e-9);
        Assert.True(after.Certainty.Value > before.Certainty.Value);
        Assert.Contains("tools for \"turn the pin\": the shop has no lathe", after.Lacking);
        Assert.Equal(["swarf cuts"], carded.Cautions.Except(guessed.Cautions));
    }

    [Fact]
    [Truth(Grade.CommonPractice, "what is not there cannot be cleaned; a sample not read to the end must be read before it goes back")]
    public void Condition_and_sample_bar_and_lack()
    {
        var missing = Routes.Run(Asked with { Condition = Seen(ConditionGrade.Missing) }).Comparison;
        Assert.Equal([Route.Clean, Route.Refurbish, Route.SendOut], missing.Rows.Where(r => r.Outlook.Barred is not null).Select(r => r.Outlook.Route));
        Assert.True(Of(Asked with { Condition = Seen(ConditionGrade.Poor) }, Route.Clean).Certainty.Value < Of(Asked with { Condition = Seen(ConditionGrade.Sound) }, Route.Clean).Certainty.Value);
        var sample = new PartSample(Guid.NewGuid(), Hinge.Id, "other hinge", SampleOrigin.Borrowed, new("a neighbour", Day, Day.AddDays(4)), []);
        Assert.Contains("3 readings of \"other hinge\", which goes back to a neighbour on 2031-03-05", Of(Asked with { Samples = [new(sample, 3)] }, Route.Remake).Lacking);
        // What is missing need not be taken off.
        Assert.True(Of(Asked with { Part = Hinge with { Condition = "missing since 1958" } }, Route.BuyNew).Hours!.Expected < Of(Asked, Route.BuyNew).Hours!.Expected);
    }

    [Fact]
    [Truth(Grade.Property, "money of another currency without a rate is not known, and said so; senseless hours are refused")]
    public void What_is_not_known_is_said()
    {
        var shop = Shop.Usual with { Currency = "CHF" };
        var o = Of(Asked with { Shop = shop }, Route.Clean);
        Assert.Null(o.Money);
        Assert.Contains(o.Lacking, l => l.StartsWith("a rate of GBP to CHF", StringComparison.Ordinal));
        Assert.Throws<RefusedException>(() => Routes.Run(Asked with { HoursAWeek = 0 }));
        var none = new TemplateTable("GBP", UsualTable.Table.Routes.Remove(Route.SendOut), UsualTable.Table.Adjust);
        Assert.False(Of(Asked with { Table = none }, Route.SendOut).Known);
    }
}
