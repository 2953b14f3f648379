using WitnessMark.Maths;
using WitnessMark.Tests;

namespace WitnessMark.PlanningOffice.Tests;

public sealed class RouteCardTests
{
    public static readonly BlankFacts Bracket = new(
        "lamp bracket", "mild steel", 1.6, 7850, 370, 180, 90, 14_000, 600,
        [new(60, 2, Math.PI / 2), new(60, 2, Math.PI / 2)], [new(6.5, 4), new(10, 1)], [], 2, []);

    [Fact]
    [Truth(Grade.CommonPractice, "holes are drilled in the flat, before folding; the first copy is checked before paint")]
    public void Steps_come_in_the_order_of_the_trade()
    {
        var card = BlankRoute.Card(Bracket, Shop.Usual);
        int Place(string word) => card.Steps.Single(s => s.Title.Contains(word, StringComparison.Ordinal)).Number;
        Assert.True(Place("Cut") < Place("Drill") && Place("Drill") < Place("Fold") && Place("Fold") < Place("Check the first") && Place("Check the first") < Place("prime"));
        Assert.Equal(Enumerable.Range(1, card.Steps.Length), card.Steps.Select(s => s.Number));
        Assert.Empty(card.SentOut);
    }

    [Fact]
    [Truth(Grade.Property, "hours by hand: 10 set-up + 2·(4 + 1) holes of 4 minutes = 50 minutes likely")]
    public void Drilling_hours_are_set_up_and_so_many_holes()
    {
        var drill = BlankRoute.Card(Bracket, Shop.Usual).Steps.Single(s => s.Title.StartsWith("Drill", StringComparison.Ordinal));
        Assert.Equal(50.0 / 60, drill.Hours.Likely, 12);
        Assert.Equal("Drill 4 × ⌀6.5, 1 × ⌀10", drill.Title);
        Assert.Equal(Rate.CommonPractice, drill.HoursSource);
    }

    [Fact]
    [Truth(Grade.Property, "mass by hand: 300 × 300 × 1.6 mm of 7850 kg/m³ = 1.1304 kg")]
    public void Stock_is_weighed_with_its_waste()
    {
        var stock = Assert.Single(BlankRoute.Card(Bracket, Shop.Usual).Stock);
        Assert.Equal("300 × 300", stock.Laying!.Sheet.Name);
        Assert.Equal(1.1304, stock.Kilograms, 10);
        Assert.Equal(5.65m, stock.Cost.Likely);
        Assert.Equal(1 - 2 * 14_000 / 90_000.0, stock.Laying.Waste, 12);
    }

    [Theory]
    [InlineData(2.5, 60, "folds like 2.37 mm")]
    [InlineData(1.2, 700, "700 mm long")]
    [Truth(Grade.CommonPractice, "folders are sold by width and by thickness of mild steel; force grows with UTS·T²")]
    public void What_the_folder_cannot_take_goes_out_with_the_reason(double thickness, double length, string why)
    {
        var shop = Shop.Usual with { Vice = null };
        var card = BlankRoute.Card(Bracket with { Thickness = thickness, Bends = [new(length, 2, 1)] }, shop);
        var step = Assert.Single(card.SentOut);
        Assert.Contains(why, step.SentOut!.Why);
        Assert.True(step.SentOut.LeadDays.High > step.SentOut.LeadDays.Low);
        Assert.True(step.Cost.Likely > 0);
    }

    [Fact]
    [Truth(Grade.Property, "the example of docs/guide/planning.md: 1.5·√(620/410) = 1.84 mm")]
    public void The_guides_stainless_example_holds()
    {
        var stainless = Bracket with { Material = "stainless", Thickness = 1.5, Strength = 620 };
        Assert.Equal(1.84, Shop.AsMildSteel(1.5, 620), 2);
        Assert.Contains("folds like 1.84 mm", Assert.Single(BlankRoute.Card(stainless, Shop.Usual with { Vice = null }).SentOut).SentOut!.Why);
    }

    [Fact]
    [Truth(Grade.Property, "every bend is made once, wherever it is made, equal bends too")]
    public void Bends_are_shared_between_folder_vice_and_sending_out()
    {
        var facts = Bracket with { Bends = [new(60, 2, 1), new(60, 2, 1), new(80, 2, 3), new(700, 2, 1), new(700, 2, 1)] };
        var titles = BlankRoute.Card(facts, Shop.Usual).Steps.Select(s => s.Title).ToList();
        Assert.Contains(titles, t => t.StartsWith("Fold 2 bends", StringComparison.Ordinal));
        Assert.Contains(titles, t => t.StartsWith("Hammer over 1 bend ", StringComparison.Ordinal));
        Assert.Equal(2, titles.Count(t => t.StartsWith("Fold 2 bends", StringComparison.Ordinal)));
    }

    [Fact]
    [Truth(Grade.Property, "what is missing in the shop is named")]
    public void An_empty_shop_sends_everything_out_and_says_why()
    {
        var empty = Shop.Usual with { Cutters = [], Folder = null, Vice = null, Drill = null, Welders = [], Lathe = null };
        var card = BlankRoute.Card(Bracket with { Welds = [new(WeldKind.Mig, 40)] }, empty);
        Assert.Equal(4, card.SentOut.Count());
        Assert.All(card.SentOut, s => Assert.NotEqual("", s.SentOut!.Why));
        Assert.Contains("no lathe", Assert.Single(TurnedRoute.Card(Stud, empty).SentOut).SentOut!.Why);
    }

    [Fact]
    [Truth(Grade.CommonPractice, "usual cautions of the trade; a brake part defers to the law and to competent persons")]
    public void Dangerous_work_carries_its_cautions()
    {
        var card = BlankRoute.Card(Bracket with { Welds = [new(WeldKind.Mig, 40)], Hazards = [Hazard.BrakeOrSteering, Hazard.Zinc] }, Shop.Usual);
        Assert.Contains("fire watch", string.Join(' ', card.Steps.Single(s => s.Title.Contains("Weld", StringComparison.Ordinal)).Cautions));
        Assert.Contains("law", string.Join(' ', card.Cautions));
        Assert.Contains("fume", string.Join(' ', card.Cautions));
        Assert.All(Enum.GetValues<Hazard>(), h => Assert.NotEmpty(Cautions.For(h)));
    }

    [Fact]
    [Truth(Grade.Property, "bar by hand: next size over 12.7 + 1 is 14; 2 pieces of 60 + 8 mm")]
    public void A_stud_is_cut_from_the_next_bar_up()
    {
        var lathe = new Lathe("small lathe", 180, 300);
        var card = TurnedRoute.Card(Stud, Shop.Usual with { Lathe = lathe });
        Assert.Equal("mild steel round bar ⌀14, 136 mm", Assert.Single(card.Stock).Words);
        Assert.Empty(card.SentOut);
        Assert.Contains("between centres", Assert.Single(TurnedRoute.Card(Stud with { Length = 301 }, Shop.Usual with { Lathe = lathe }).SentOut).SentOut!.Why);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    [Truth(Grade.Property, "bad facts are refused in words")]
    public void Bad_facts_are_refused(double thickness) =>
        Assert.Contains("thickness", Assert.Throws<RefusedException>(() => BlankRoute.Card(Bracket with { Thickness = thickness }, Shop.Usual)).Message);

    [Fact]
    [Truth(Grade.Property, "a blank too small to see is refused before a sheet is filled with it")]
    public void A_speck_of_a_blank_is_refused() =>
        Assert.Contains("blank width", Assert.Throws<RefusedException>(() => BlankRoute.Card(Bracket with { Width = 1e-9 }, Shop.Usual)).Message);

    [Fact]
    [Truth(Grade.Property, "money of two currencies is never added")]
    public void Currencies_are_not_mixed() =>
        Assert.Throws<RefusedException>(() => Cost.None("GBP") + Cost.None("EUR"));

    [Fact]
    [Truth(Grade.Property, "a shop that cannot be is refused in words")]
    public void A_senseless_shop_is_refused()
    {
        Assert.Null(Shop.Usual.Wrong);
        Assert.Contains("folder", (Shop.Usual with { Folder = Shop.Usual.Folder! with { Width = -1 } }).Wrong!.Sentence);
        Assert.Contains("currency", (Shop.Usual with { Currency = "quid" }).Wrong!.Sentence);
        Assert.Contains("lists", (Shop.Usual with { Cutters = default }).Wrong!.Sentence);
        Assert.Contains("rise", (Shop.Usual with { Rates = Rates.Usual with { Hole = Rate.Common(4, 2, 1) } }).Wrong!.Sentence);
    }

    static TurnedFacts Stud => new("stud", "mild steel", 7850, 12.7, 60, 2, 2, []);
}
