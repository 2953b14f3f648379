using WitnessMark.Maths;

namespace WitnessMark.PlanningOffice;

/// <summary>The route of a turned part: the next bar up, turn, thread, check.</summary>
public static class TurnedRoute
{
    /// <exception cref="RefusedException">A fact of the part or of the shop is out of its range.</exception>
    public static RouteCard Card(TurnedFacts facts, Shop shop)
    {
        if ((facts.Wrong ?? shop.Wrong) is { } wrong) throw new RefusedException(wrong);
        var steps = new StepWriter(shop);
        var title = $"Turn {facts.Quantity} × ⌀{facts.Diameter:0.###} × {facts.Length:0.##} mm" + (facts.Threads > 0 ? ", thread" : "");
        if (WhyNotHere(facts, shop) is { } why)
            steps.Outside(OutsideWork.Turning, title, why);
        else
            steps.Own(title, shop.Lathe!.Name, Cautions.For(Hazard.Turning, Hazard.SharpEdges),
                (shop.Rates.Turn, facts.Quantity), (shop.Rates.Thread, (double)facts.Quantity * facts.Threads));
        steps.Own("Check the first copy against the drawing, try it with its nut", "micrometer, pitch gauge", [], (shop.Rates.FirstCopyCheck, facts.Quantity));
        return new(facts.Title, facts.Quantity, [Stock(facts, shop)], steps.Steps, Cautions.For([.. facts.Hazards]));
    }

    static string? WhyNotHere(TurnedFacts f, Shop shop) => shop.Lathe switch
    {
        null => "There is no lathe here.",
        { } t when f.Diameter > t.Swing => $"The {t.Name} swings {t.Swing:0.#} mm.",
        { } t when f.Length > t.BetweenCentres => $"The {t.Name} takes {t.BetweenCentres:0.#} mm between centres.",
        _ => null,
    };

    static StockToBuy Stock(TurnedFacts f, Shop shop)
    {
        var wanted = f.Diameter + shop.Stock.BarAllowance;
        var bar = shop.Stock.BarDiameters.Where(d => d >= wanted).DefaultIfEmpty(wanted).Min();
        var length = f.Quantity * (f.Length + shop.Stock.EndAllowance);
        var kilograms = Math.PI / 4 * bar * bar * length * 1e-9 * f.Density;
        var price = shop.Prices.MaterialPerKilogram(f.Material);
        return new($"{f.Material} round bar ⌀{bar:0.##}, {length:0} mm", Laying: null, kilograms,
            Cost.Of(price.Value * kilograms, shop.Currency), price.Source);
    }
}
