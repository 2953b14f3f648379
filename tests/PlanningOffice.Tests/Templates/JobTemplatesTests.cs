using WitnessMark.PlanningOffice.Plans;
using WitnessMark.PlanningOffice.Templates;
using WitnessMark.Stores;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests.Templates;

[Truth(Grade.Property, "each route gives jobs that can be done in an order; generating again adds nothing; edits stay")]
public sealed class JobTemplatesTests
{
    static readonly Guid Van = new(7, 0, 0, [0, 0, 0, 0, 0, 0, 0, 7]);
    static readonly VehicleSystem Brakes = new(NamedId.Of(Van, "Brakes"), Van, "Brakes", 0);

    static Part Part(string name, Route? route, int quantity = 1, string condition = "worn") =>
        new(NamedId.Of(Brakes.Id, name), Brakes.Id, name, "", Hand.None, quantity, condition, route is { } r ? new(r, "so", new(2026, 11, 1)) : null);

    static PlanFacts Facts(params Part[] parts) => new(Van, [Brakes], [.. parts], [], []);

    static Proposal Propose(PlanFacts facts) => JobTemplates.Propose(facts, UsualTable.Table);

    static Job Of(Proposal p, Part part, string key) => p.Missing.Single(j => j.Id == JobTemplates.IdOf(part.Id, key));

    [Fact]
    public void Every_route_gives_sound_jobs_that_end_in_a_refit()
    {
        Part[] parts = [.. Enum.GetValues<Route>().Select(r => Part($"{r}", r))];
        var proposal = Propose(Facts([.. parts, Part("Undecided", null)]));
        Assert.Empty(PlanCheck.Faults(proposal.Missing));
        Assert.All(parts, p => Assert.Equal(WorkKind.Refit, Of(proposal, p, "refit").Kind));
        Assert.Equal("Undecided", Assert.Single(proposal.Undecided).Name);
        Assert.Equal(parts.Length, proposal.Missing.Single(j => j.Kind == WorkKind.Adjust).After.Length);
        Assert.Single(PlanCheck.Ready(proposal.Missing), j => j.PartId == parts[0].Id);
    }

    [Fact]
    public void Generating_again_adds_nothing_and_keeps_what_was_edited()
    {
        var facts = Facts(Part("Rod", Route.Refurbish), Part("Shoe", Route.SendOut, 8));
        var edited = Propose(facts).Missing.Select(j => j with { Title = "as I call it", After = [] });
        var again = Propose(facts with { Standing = [.. edited] });
        Assert.Empty(again.Missing);
        Assert.Empty(again.NoLonger);
        Assert.Equal([JobTemplates.IdOf(Brakes.Id, "adjust")], again.Relinked.Select(j => j.Id));
    }

    [Fact]
    public void A_changed_route_tells_which_open_jobs_no_longer_belong()
    {
        var facts = Facts(Part("Rod", Route.Refurbish));
        var old = Propose(facts).Missing;
        var done = old.Select(j => j.Kind == WorkKind.Look ? j with { State = JobState.Done } : j);
        var changed = Propose(facts with { Parts = [Part("Rod", Route.BuyNew)], Standing = [.. done] });
        Assert.Equal(["Rod: order and check on arrival"], changed.Missing.Select(j => j.Title));
        Assert.Equal(["Rod: prime and paint", "Rod: repair", "Rod: trial fit"], changed.NoLonger.Select(j => j.Title).Order());
    }

    [Fact]
    public void The_card_of_a_part_makes_it()
    {
        var part = Part("Bracket", Route.Remake);
        var card = Job.Of(new Guid(1, 1, 1, [1, 1, 1, 1, 1, 1, 1, 1]), Van, Brakes.Id, part.Id, BlankRoute.Card(RouteCardTests.Bracket, Shop.Usual));
        var fresh = Propose(Facts(part) with { Standing = [card] });
        Assert.Equal([card.Id], Of(fresh, part, "trial").After);
        Assert.DoesNotContain(fresh.Missing, j => j.Title.EndsWith(": make"));

        var late = Propose(Facts(part) with { Standing = [card, .. Propose(Facts(part)).Missing] });
        Assert.Equal([card.Id], late.Relinked.Single().After);
        Assert.Equal("Bracket: make", Assert.Single(late.NoLonger).Title);
    }

    [Fact]
    public void The_refit_order_becomes_waiting_between_refits()
    {
        var (rod, shoe) = (Part("Rod", Route.Clean), Part("Shoe", Route.SendOut));
        var facts = Facts(rod, shoe) with { RefitBefore = [(shoe.Id, rod.Id)] };
        Assert.Contains(JobTemplates.IdOf(shoe.Id, "refit"), Of(Propose(facts), rod, "refit").After);
        var kept = Propose(facts with { RefitBefore = [] }).Missing;
        Assert.Equal("Rod: refit", Assert.Single(Propose(facts with { Standing = kept }).Relinked).Title);
    }

    [Fact]
    public void Hours_grow_by_the_stated_share_for_each_further_piece()
    {
        var t = UsualTable.Table.Routes[Route.Refurbish].Single(j => j.Key == "repair");
        var (one, four) = (Part("One", Route.Refurbish), Part("Four", Route.Refurbish, 4));
        var p = Propose(Facts(one, four));
        Assert.Equal(t.Hours.Value, Of(p, one, "repair").Hours);
        Assert.Equal(t.Hours.Value * (1 + 3 * t.EachMore), Of(p, four, "repair").Hours);
    }

    [Fact]
    public void What_is_missing_is_not_taken_off() =>
        Assert.DoesNotContain(Propose(Facts(Part("Lamp", Route.BuySecondHand, 1, "Missing"))).Missing, j => j.Kind == WorkKind.Strip);

    [Theory]
    [InlineData("Brake shoe", "Linings oil-soaked", Hazard.AsbestosLining)]
    [InlineData("Fuel tank", "pinholes", Hazard.Tank)]
    [InlineData("Front spring", "flat", Hazard.Spring)]
    [InlineData("Drop arm", "sound", Hazard.BrakeOrSteering)]
    [InlineData("Wiring loom", "powder", Hazard.Electrics)]
    [InlineData("Cab door", "paint may hold lead", Hazard.OldPaint)]
    [Truth(Grade.CommonPractice, "the usual cautions of the trade for these parts")]
    public void Dangerous_parts_are_known_by_their_words(string name, string condition, Hazard hazard) =>
        Assert.Contains(hazard, PartHazards.Of(Part(name, Route.Clean, 1, condition), ""));

    [Fact]
    [Truth(Grade.CommonPractice, "each hazard has its caution")]
    public void Every_hazard_has_a_caution() =>
        Assert.Equal(Enum.GetValues<Hazard>().Length, Cautions.For(Enum.GetValues<Hazard>()).Length);
}
